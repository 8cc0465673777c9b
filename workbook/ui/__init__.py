"""Below every feature, knowing none: what all of them show and use.

markup.py        HTML built from calls, always escaped
pieces.py        what is said of a state, a table, names, the look, in no widgets
theme.css        every color, cards, boxes, buttons; look.css and look_pages.css, how each feature lays them out
controls.py      panels, buttons, lists and boxes to choose from; the one way to show and hide; chapter_ticks.py, chapters to check
answer.py        the place for an answer, in answer.js and order.js: a box or rows to choose or put in order
entry.py         other boxes for text, sent by Enter or a button; a whole number typed
pages.py         the pages that ship; contents.py, what chapters are called; chapter.py, what is in one
cautions.py      what to mind before going near a machine
saving.py        a link that saves a file; a file that is there only when whole; changed.py, whether one changed
spreadsheet.py   the one writer of CSV; a decimal comma told; csv_rows.py, the rows of anybody's CSV
flaws.py         the mistakes of several people, each once
printing.py      PDFs by typst, and what printed pages share
static_site.py   what runs in a reader's browser alone
"""
