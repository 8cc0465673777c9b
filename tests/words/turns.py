"""Turns of phrase that nobody at a plant would use, and words of another register.

Each is a pattern and what to write instead. A test finds none of them in anything a reader can
meet. To add one: put it here, run `python -m tests.words --turns`, and rewrite what it finds.
"""

import re
from collections.abc import Iterator

__all__ = ["TURNS", "turns_in"]

TURNS: dict[str, str] = {
    # the verb "have" turned round
    r"\b(?:has|have|had) (?:it|he|she|they|each|the \w+|this \w+)(?: \w+)?\?": "does it have",
    r"\bhas it then\b": "does it have",
    r"\bhow many \w+ has\b": "how many ... does ... have",
    r"\bWhat do you say\b|\bWhat of\b": "What would you conclude?",
    r"\bis no (?:pump|motor|sign|proof|reason|fault|lock|isolation)\b": "isn't a",
    r"\bhas none\b|\bhave none\b": "doesn't have any",
    r"\bso that no\w*\b": "so ... can't",
    r"\bstands? (?:above|over|under|below) the line\b": "goes on top, goes on the bottom",
    r"\bstands? (?:at|for itself|aside)\b": "is",
    # archaic or foreign
    r"\bdear(?:er|est)?\b": "on-peak, expensive",
    r"\breckon\w*": "calculate, figure",
    r"\bmend(?:s|ed|ing)?\b": "fix",
    r"\bparts? (?:the|all the|no|every) wires?\b|\bparts no wire\b": "opens the circuit",
    r"\bleft out of account\b": "ignored",
    r"\bthus\b|\bhence\b|\bwhereby\b|\bthereof\b|\bherein\b": "so",
    r"\bturned round\b|\bturn(?:s|ed)? (?:it )?round\b|\bround about\b": "rearranged, around",
    r"\bgo(?:es)? well\b": "works",
    r"\bformula wants\b|\bwants (?:it|the \w+) in\b": "takes",
    r"\bpower goes in\b|\bhas the names right\b": "What is the ...? Which set of labels is right?",
    r"\bstands? in a row\b": "one after another",
    r"\b(?:wrong|other) way round\b": "backward, the other way",
    r"\bgoes in once\b|\bOnce turns\b": "Use it once.",
    r"\bside of the line\b": "multiply or divide",
    r"\bwent in twice\b": "You used the ... twice.",
    r"\bat all hours\b": "around the clock, a steady ...",
    r"\bof one size\b": "the same size",
    r"\bgo(?:es)? with the (?:speed|square|cube)\b": "changes with",
    r"\bwater it draws\b": "the water in the wet well",
    r"\bplainly wrong\b": "has to be wrong",
    r"\bset right to\b": "corrected to",
    r"\bas if it were in\b|\bneeds? no such\b": "You read the ... as ...; there is nothing to convert",
    r"\b(?:tested|tests) it dead\b|\bon ground for\b": "verified that it is dead; grounded for",
    r"\btakes (?:its (?:square|cube)|it as it is)\b": "changes with its square",
    r"\bper unit of depth\b": "each foot or meter of depth",
    r"\b(?:over|below) the line\b": "on top, on the bottom",
    r"\bwhom\b": "who",
    r"(?-i:\bLeft out: )": "You left out the ...",
    r"\bThis (?:multiplies|divides|adds|subtracts|corrects)\b": "You ...",
    r"\bmore dearly\b|\bcheaply\b|\bin vain\b|\bby no means\b|\bas yet\b": "plain words",
    # school words, British words
    r"\bsits? (?:an|the|certification|for)?\s*exams?\b|\bsit certification\b": "take an exam",
    r"(?<!by )\bhand(?:s|ed|ing)? in\b": "turn in",
    r"\b(?:another|a later|a newer|an older|the same|no|which|new) edition\b": "version",
    r"\bticks? (?:a|an|the|every|all|\*)": "check",
    r"\b(?:is|are|was|were) not marked\b|\bmarks? what was\b": "graded",
    # the machine's own turns
    r"\bdid not end well\b": "didn't work",
    r"\b(?:the )?whole story is in\b|\b[Ww]hy is written in\b": "the details are in",
    r"\bstands? (?:in this course|in line|there|under each|behind it)\b": "is",
    r"\bwhat is replaced\b|\bsomebody has to look\b": "you need to look at",
    r"\bon paper only\b": "calculated only",
    r"\bpractis\w+": "practice",
    r"\b(?:colour|centre|metre|litre|judgement|licence|grey|fibre|neighbour|favour|labour)s?\b": (
        "US spelling"
    ),
    r"\b(?:recognis|organis|realis|minimis|maximis|summaris|analys)(?:e|ed|es|ing)\b": "US spelling",
    r"\b(?:whilst|amongst|learnt|spelt|anticlockwise|earthed|earthing|(?<!force[ -])mains|spanner|pliers)\b": (
        "US words"
    ),
    # names of the trade
    r"\bwhat the pipe takes\b|\bwhat fittings take\b|\bfriction rate\b|\bpipe takes (?=[\d{])": (
        "friction loss"
    ),
    r"\bvapou?r head\b|\bthe atmosphere holds up\b": "vapor pressure, barometric pressure",
    r"(?<!\bone )(?<!\b1 )\bmegohm(?=[ .,;:?)])": "megohms",
    r"\d °c\b": "°C",
    r"\bconversion backward\b|\bas if it were in\b": "which way, and what you do; treated as",
    r"\blosses in the suction pipe is\b|\blosses\. (?:Add|Subtract) it\b": "are; them",
    r"\bthe percent of NEC\b|\bevery conversion (?:the|\.)": "the percent in NEC; conversion factor",
    r"\ba hundredfold\b|\bthe hundred of\b|\bthe minutes of an hour\b": "60 minutes per hour",
    r"(?<![\w.])(?:gpm|psi|hp|kW) a (?:foot|minute|second|hour)\b": "per",
    r"\ba (?=8|1[18](?!\d))": "an; a drawn number needs words that fit any: with sheaves of {...}",
    r"\ban (?=\d)(?!8|1[18](?!\d))": "a; a drawn number needs words that fit any",
}

_COMPILED = {
    re.compile(pattern, 0 if "°c" in pattern else re.IGNORECASE): instead
    for pattern, instead in TURNS.items()
}


def turns_in(text: str) -> Iterator[str]:
    """What the list finds in a text, each with what to write instead."""
    for pattern, instead in _COMPILED.items():
        for found in pattern.finditer(text):
            yield f"{found[0]} → {instead}"
