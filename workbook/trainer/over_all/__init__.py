"""One person over all the sets of a course: points, tries and time, hours in class, and a record to print.

- `rows.py`: a row for each person of the list, from the gradebook and the answer sheets
- `attendance.py`: the hours that the trainer types, a meeting each
- `files.py`: those rows for a spreadsheet, and in the form that learning-management systems take in
- `completion.py`: the record of completion, a page for each person
- `steps.py`: the commands grades, attend and completion
"""
