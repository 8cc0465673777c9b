"""What a class's marks say: facts, words and pictures of them, files, and the page that shows them.

- `gathered.py`: all that was handed in for a set, marked
- `facts.py`: people, questions and mistakes as data; how well a question tells people apart
- `ways.py`: how people went through cases of find the fault
- `words.py`: sentences and rows, and who needs help
- `sections.py`: the parts in order, their pictures, and the report as text
- `class_panel.py`: the page; `files.py`: files for a spreadsheet; `command.py`: the command class
"""
