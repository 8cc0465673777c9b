"""Group study: a set of problems as a short text, worked by everybody, and the results put together.

There is no server: the text goes by chat or in a link, and each member's result is a file.
"""
