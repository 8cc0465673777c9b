"""Whatever is made of many problems: exams, sets of work, sheets.

- `paper.py`: an exam, from its code; `paper_questions.py`: its questions, the same for anyone who has it.
- `work_set.py`: a set of work, made, checked, or read from its code; `set_questions.py`: the kinds of
  its questions, the same for all; `set_cases.py`: each person's own problems.
- `fault_part.py`: the cases of find the fault in a set or an exam.
- `own_plant.py`: a trainer's own plant, from a table; `kept_ranges.py`: which problems keep to the
  ranges of its pumps.
- `shares.py`: the share of each chapter, as a line of text and in a code.
- `credit.py`: the share of the points that an answer earns.
- `sheet_code.py`: the code of a printed sheet, short enough to type.
"""
