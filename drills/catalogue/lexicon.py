"""content/lexicon/*.toml -> Lexicon.

The files of the folder itself are shared; an entry in the folder of a locale takes the place of
the shared one with the same key, or comes after them when there is none.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from pathlib import Path
from typing import TypeVar

from drills.catalogue.facts import check_facts, fact, fact_noun
from drills.catalogue.fields import Fields, nearest
from drills.catalogue.sections import read_sections
from drills.catalogue.word_fields import BANDS, HIGHEST_ZIPF, one_word
from drills.core.facts import Fact, FactNoun, Facts
from drills.core.meanings import Tense
from drills.core.plans import LOCALES
from drills.core.problems import BadInput, Problem
from drills.core.words import (
    Adjective,
    Adjunct,
    AdjunctKind,
    Band,
    KinTerm,
    Lexicon,
    Noun,
    Sex,
    Sort,
    Verb,
)

_FEW_WORDS = re.compile(r"[a-z]+( (?:[a-z]+|[A-Z][a-z]+day))*")

Entry = TypeVar("Entry", Noun, Verb, Adjective, Adjunct, KinTerm, FactNoun)

_SECTIONS = (
    *("noun", "verb", "verb_alone", "verb_transfer", "adjective", "adjunct", "kin"),
    *("fact_noun", "fact_verb", "fact"),
)


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
    reader.check_links()
    return Lexicon(
        locale=locale,
        nouns=reader.nouns,
        verbs=reader.verbs,
        adjectives=reader.adjectives,
        alone=reader.alone,
        transfers=reader.transfers,
        adjuncts=reader.adjuncts,
        kin=reader.kin,
        facts=reader.facts,
    )


class _Reader:
    def __init__(self, problems: list[Problem]) -> None:
        self.problems = problems
        self.nouns: dict[str, Noun] = {}
        self.verbs: dict[str, Verb] = {}
        self.alone: dict[str, Verb] = {}
        self.transfers: dict[str, Verb] = {}
        self.adjectives: dict[str, Adjective] = {}
        self.adjuncts: dict[str, Adjunct] = {}
        self.kin: dict[str, KinTerm] = {}
        self.fact_nouns: dict[str, FactNoun] = {}
        self.fact_verbs: dict[str, Verb] = {}
        self._facts: list[tuple[Fields, Fact]] = []
        self._met: dict[tuple[str, str], str] = {}
        self._links: list[tuple[Fields, str, str, Mapping[str, object]]] = []

    def start_overriding(self) -> None:
        """From here on an entry may take the place of one read before."""
        self._met = {}

    def read(self, path: Path, where: str) -> None:
        for fields in read_sections(path, where, self.problems, many=_SECTIONS):
            match fields.block.name:
                case "noun":
                    self._keep(fields, self.nouns, noun_of)
                case "verb":
                    verb = self._keep(fields, self.verbs, _verb)
                    self._link(fields, "drawn_as", (verb.drawn_as,), self.verbs)
                    self._link(fields, "leaning", verb.leaning, self.nouns)
                    self._link(fields, "things", verb.things, self.nouns)
                case "verb_alone":
                    self._keep(fields, self.alone, verb_alone_of)
                case "verb_transfer":
                    self._keep(fields, self.transfers, verb_alone_of)
                case "adjective":
                    adjective = self._keep(fields, self.adjectives, adjective_of)
                    self._link(fields, "opposite", (adjective.opposite,), self.adjectives)
                case "adjunct":
                    self._keep(fields, self.adjuncts, _adjunct)
                case "kin":
                    self._keep(fields, self.kin, _kin)
                case "fact_noun":
                    self._keep(fields, self.fact_nouns, fact_noun)
                case "fact_verb":
                    self._keep(fields, self.fact_verbs, verb_alone_of)
                case "fact":
                    self._keep_fact(fields)

    def check_links(self) -> None:
        """Note each entry that names another one which is nowhere.

        Not while there are other faults: the other one may be missing for one of those.
        """
        if self.problems:
            return
        for fields, made in self._facts:
            for key, named in (("doer", made.doer), ("done_to", made.done_to)):
                self._link(fields, key, (named,), self._known_nouns)
            self._link(fields, "verb", (made.verb,), self._known_verbs)
        for fields, key, named, entries in self._links:
            if named not in entries:
                fields.note(f"There is no `{named}`.", nearest(named, entries), key=key)
        if not self.problems:
            check_facts(self._facts, self._known_nouns)

    @property
    def facts(self) -> Facts:
        known = tuple(each for _, each in self._facts)
        return Facts(nouns=self.fact_nouns, verbs=self.fact_verbs, known=known)

    @property
    def _known_nouns(self) -> Mapping[str, Noun | FactNoun]:
        return {**self.fact_nouns, **self.nouns}

    @property
    def _known_verbs(self) -> Mapping[str, Verb]:
        return {**self.fact_verbs, **self.verbs}

    def _keep_fact(self, fields: Fields) -> None:
        made = fact(fields)
        fields.close()
        self._facts.append((fields, made))

    def _link(
        self,
        fields: Fields,
        key: str,
        named: Iterable[str | None],
        entries: Mapping[str, object],
    ) -> None:
        self._links += [(fields, key, each, entries) for each in named if each is not None]

    def _keep(
        self, fields: Fields, entries: dict[str, Entry], make: Callable[[Fields], Entry]
    ) -> Entry:
        entry = make(fields)
        fields.close()
        place = f"{fields.where}:{fields.block.line}"
        first = self._met.setdefault((fields.block.name, entry.key), place)
        if first != place:
            fields.note(f"`{entry.key}` is already at {first}.", "Remove one.", key="key")
        entries[entry.key] = entry
        return entry


def noun_of(fields: Fields) -> Noun:
    key = fields.text("key")
    sort = fields.choice("sort", Sort)
    sex = fields.choice("sex", Sex) if sort is Sort.PERSON or fields.has("sex") else None
    if sort is Sort.THING and sex is not None:
        fields.note(f"`{key}` is a thing and has no sex.", "Remove `sex`.", key="sex")
    singular, plural = one_word(fields, "singular"), one_word(fields, "plural")
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
        zipf=fields.number("zipf", 0.0, HIGHEST_ZIPF),
        zipf_source=fields.text("zipf_source"),
        container=fields.flag("container", default=False),
        drawn_as=_other(fields, "drawn_as"),
    )


def _verb(fields: Fields) -> Verb:
    verb = replace(
        verb_alone_of(fields),
        band=fields.one_of("band", BANDS) if fields.has("band") else Band.EVERYDAY,
        leaning=fields.texts("leaning", default=()),
        things=fields.texts("things", default=()),
        reflexive=fields.flag("reflexive", default=False),
        drawn_as=_other(fields, "drawn_as"),
    )
    if verb.base and verb.base == verb.past:
        # Tense must show, or an exercise on tense has two right answers.
        fields.note(f"`{verb.key}` has one form for now and then.", "Use another verb.", key="past")
    return verb


def verb_alone_of(fields: Fields) -> Verb:
    return Verb(
        key=fields.text("key"),
        base=one_word(fields, "base"),
        third_person=one_word(fields, "third_person"),
        past=one_word(fields, "past"),
        past_participle=one_word(fields, "past_participle"),
        ing=one_word(fields, "ing"),
        group=fields.text("group"),
        sorts=frozenset(fields.choices("sorts", Sort)),
        zipf=fields.number("zipf", 0.0, HIGHEST_ZIPF),
        zipf_source=fields.text("zipf_source"),
    )


def adjective_of(fields: Fields) -> Adjective:
    return Adjective(
        key=fields.text("key"),
        base=one_word(fields, "base"),
        zipf=fields.number("zipf", 0.0, HIGHEST_ZIPF),
        zipf_source=fields.text("zipf_source"),
        comparative=one_word(fields, "comparative") if fields.has("comparative") else "",
        opposite=_other(fields, "opposite"),
        passing=fields.flag("passing", default=True),
    )


def _adjunct(fields: Fields) -> Adjunct:
    tenses = tuple(fields.choices("tenses", Tense)) if fields.has("tenses") else tuple(Tense)
    text = fields.text("text")
    if text and not _FEW_WORDS.fullmatch(text):
        mend = "Use words in small letters; only a day has a capital."
        fields.note(f'`text` is "{text}".', mend, key="text")
    if text.split()[:1] == ["by"]:
        # "By" is the sign of the passive.
        fields.note("`text` begins with by.", "Use another place, such as near.", key="text")
    return Adjunct(
        key=fields.text("key"),
        text=text,
        kind=fields.choice("kind", AdjunctKind),
        tenses=tenses,
        zipf=fields.number("zipf", 0.0, HIGHEST_ZIPF),
        zipf_source=fields.text("zipf_source"),
        under_way=fields.flag("under_way", default=False),
    )


def _kin(fields: Fields) -> KinTerm:
    return KinTerm(
        key=fields.text("key"),
        singular=one_word(fields, "singular"),
        plural=one_word(fields, "plural"),
        sex=fields.choice("sex", Sex),
        zipf=fields.number("zipf", 0.0, HIGHEST_ZIPF),
        zipf_source=fields.text("zipf_source"),
    )


def _other(fields: Fields, key: str) -> str | None:
    """The key of another entry, or None where there is none."""
    return fields.text(key) if fields.has(key) else None
