"""Work on paper: a sheet for each person and a key as one PDF, and answers typed back, marked.

    assigned = read_set_file(Path("source/week-3/set.toml"))
    sheets = sheets_of(assigned, read_people(Path("people.csv")))   # or numbered(30)
    Path("week-3.pdf").write_bytes(pdf_of(assigned, sheets))
    Path("week-3-answers.csv").write_bytes(answers_csv(sheets))     # to type the answers into
    with open("week-3-answers.csv", "rb") as stream:
        for row in marks_of(assigned, TypedFile(stream, assigned.work.count), people):
            print(row.marked.person, row.marked.points)

`solver/sets/sheet_code.py` has the code on each sheet. Marks are made by the rules of `marking/`, as
for work that is handed in otherwise.

- `sheets.py`: a sheet for each person, and the file to type its answers into
- `printed.py`: what is printed, as data for `sheets.typ`
- `typed.py`: the file of answers read, from any spreadsheet
- `marks.py`: whose sheet each row is, its marks, and the file of them
- `keeping.py`: the answers kept in the course, to be graded with the rest
- `command.py`, `steps.py`: the command paper, and what it does
"""
