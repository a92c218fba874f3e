"""content/lexicon/*.toml -> Lexicon.

The files of the folder itself are shared; an entry in the folder of a locale takes the place of
the shared one with the same key, or comes after them when there is none.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

from drills.catalogue.fields import Fields, nearest
from drills.catalogue.sections import read_sections
from drills.core.problems import BadInput, Problem
from drills.core.words import Adjective, Lexicon, Noun, Sex, Sort, Verb

LOCALES = ("en-US", "en-GB")
BANDS = ("everyday", "rare")

_ONE_WORD = re.compile(r"[a-z]+")
_HIGHEST_ZIPF = 8.0

Entry = TypeVar("Entry", Noun, Verb, Adjective)


def load_lexicon(folder: Path, *, locale: str) -> Lexicon:
    """Every word for `locale`, in the order of the files' names and of their lines.

    folder: the content folder.   Raises: BadInput with every fault found.
    """
    problems: list[Problem] = []
    lexicon = read_lexicon(folder, locale=locale, problems=problems)
    if problems:
        raise BadInput(problems)
    return lexicon


def read_lexicon(folder: Path, *, locale: str, problems: list[Problem]) -> Lexicon:
    """As `load_lexicon`, but adds each fault to `problems` instead."""
    if locale not in LOCALES:
        mend = nearest(locale, LOCALES)
        problems.append(Problem(where="locale", message=f"There is no {locale!r}.", mend=mend))
    reader = _Reader(problems)
    shared = sorted((folder / "lexicon").glob("*.toml"))
    if not shared:
        problems.append(
            Problem(
                where=f"{folder.name}/lexicon",
                message="There are no words.",
                mend="Add lexicon/*.toml.",
            )
        )
    for path in shared:
        reader.read(path, f"{folder.name}/lexicon/{path.name}")
    reader.start_overriding()
    for path in sorted((folder / "lexicon" / locale).glob("*.toml")):
        reader.read(path, f"{folder.name}/lexicon/{locale}/{path.name}")
    return Lexicon(
        locale=locale, nouns=reader.nouns, verbs=reader.verbs, adjectives=reader.adjectives
    )


class _Reader:
    def __init__(self, problems: list[Problem]) -> None:
        self.problems = problems
        self.nouns: dict[str, Noun] = {}
        self.verbs: dict[str, Verb] = {}
        self.adjectives: dict[str, Adjective] = {}
        self._met: dict[tuple[str, str], str] = {}

    def start_overriding(self) -> None:
        """From here on an entry may take the place of one read before."""
        self._met = {}

    def read(self, path: Path, where: str) -> None:
        for fields in read_sections(path, where, self.problems, many=("noun", "verb", "adjective")):
            match fields.block.name:
                case "noun":
                    self._keep(fields, self.nouns, _noun)
                case "verb":
                    self._keep(fields, self.verbs, _verb)
                case "adjective":
                    self._keep(fields, self.adjectives, _adjective)

    def _keep(
        self, fields: Fields, entries: dict[str, Entry], make: Callable[[Fields], Entry]
    ) -> None:
        entry = make(fields)
        fields.close()
        place = f"{fields.where}:{fields.block.line}"
        first = self._met.setdefault((fields.block.name, entry.key), place)
        if first != place:
            fields.note(f"`{entry.key}` is already at {first}.", "Remove one.", key="key")
        entries[entry.key] = entry


def _noun(fields: Fields) -> Noun:
    key = fields.text("key")
    sort = fields.choice("sort", Sort)
    sex = fields.choice("sex", Sex) if sort is Sort.PERSON or fields.has("sex") else None
    if sort is Sort.THING and sex is not None:
        fields.note(f"`{key}` is a thing and has no sex.", "Remove `sex`.", key="sex")
    singular, plural = _form(fields, "singular"), _form(fields, "plural")
    if singular == plural and plural:
        # Number must show, or an exercise on number has two right answers.
        fields.note(f"`{key}` has one form for one and many.", "Use another noun.", key="plural")
    return Noun(
        key=key,
        singular=singular,
        plural=plural,
        sort=sort,
        sex=sex,
        size=fields.whole("size", 1, 3),
        band=fields.one_of("band", BANDS),
        zipf=fields.number("zipf", 0.0, _HIGHEST_ZIPF),
        zipf_source=fields.text("zipf_source"),
        container=fields.flag("container", default=False),
    )


def _verb(fields: Fields) -> Verb:
    verb = Verb(
        key=fields.text("key"),
        base=_form(fields, "base"),
        third_person=_form(fields, "third_person"),
        past=_form(fields, "past"),
        past_participle=_form(fields, "past_participle"),
        ing=_form(fields, "ing"),
        group=fields.text("group"),
        sorts=frozenset(fields.choices("sorts", Sort)),
        zipf=fields.number("zipf", 0.0, _HIGHEST_ZIPF),
        zipf_source=fields.text("zipf_source"),
    )
    if verb.base and verb.base == verb.past:
        # Tense must show, or an exercise on tense has two right answers.
        fields.note(f"`{verb.key}` has one form for now and then.", "Use another verb.", key="past")
    return verb


def _adjective(fields: Fields) -> Adjective:
    return Adjective(
        key=fields.text("key"),
        base=_form(fields, "base"),
        zipf=fields.number("zipf", 0.0, _HIGHEST_ZIPF),
        zipf_source=fields.text("zipf_source"),
    )


def _form(fields: Fields, key: str) -> str:
    form = fields.text(key)
    if form and not _ONE_WORD.fullmatch(form):
        fields.note(f'`{key}` is "{form}".', "Use one word in small letters.", key=key)
    return form
