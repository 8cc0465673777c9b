"""Whatever is made of many problems: exams, sets of work, sheets, group sets."""
