"""Work on paper: a sheet for each person and a key as one PDF, and answers typed back, marked.

    assigned = read_set_file(Path("source/week-3/set.toml"))
    sheets = sheets_of(assigned, read_people(Path("people.csv")))   # or numbered(30)
    Path("week-3.pdf").write_bytes(pdf_of(assigned, sheets))
    Path("week-3-answers.csv").write_bytes(answers_csv(sheets))     # to type the answers into
    with open("week-3-answers.csv", "rb") as stream:
        for row in marks_of(assigned, TypedFile(stream, assigned.work.count), people):
            print(row.marked.person, row.marked.points)

`solver/sets/sheet_code.py` has the code on each sheet. Marks are made by the rules of
`workbook/trainer/marking.py`, as for work that is handed in otherwise.
"""
