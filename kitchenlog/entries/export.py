"""Writes the phone's copy of the table: `python -m kitchenlog.entries.export [--check]`."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable
from dataclasses import fields as fields_of
from pathlib import Path
from typing import get_args

from kitchenlog.calc.units import UNITS
from kitchenlog.entries.kinds import (
    EARLIER_KINDS,
    KINDS,
    SUBJECT_TYPES,
    TABLE_NUMBER,
    Field,
    Kind,
)
from kitchenlog.entries.kinds.fields import FieldType
from kitchenlog.entries.refusals import SENTENCES

ROOT = Path(__file__).parents[2]
PHONE_COPY = ROOT / "frontend" / "src" / "entries" / "kinds.ts"
LIST_PAGE = ROOT / "DEVELOPERS.md"
LIST_BEGIN, LIST_END = "<!-- kinds:begin -->", "<!-- kinds:end -->"

_HEAD = """\
/** The table of kinds. Written by `make kinds` from kitchenlog/entries/kinds; do not edit. */

export type SubjectType = %(subject_types)s;
export type Measure = "mass" | "volume" | "count";
export type UnitCode = %(units)s;
export type JsonValue =
  | string
  | number
  | boolean
  | null
  | readonly JsonValue[]
  | { readonly [name: string]: JsonValue };

/** An amount as it was read, with its unit. */
export interface Quantity {
  readonly amount: string;
  readonly unit: UnitCode;
}

/** One field of a definition, from what to what; null where it may be missing and is. */
export interface Change {
  readonly from: JsonValue;
  readonly to: JsonValue;
}

export type FieldType = %(field_types)s;

export interface Field {
  readonly name: string;
  readonly type: FieldType;
  readonly is_required?: false;
  readonly most_chars?: number;
  readonly most_items?: number;
  readonly least_items?: number;
  readonly digits?: number;
  readonly places?: number;
  readonly least?: string;
  readonly most?: string;
  readonly to?: SubjectType;
  readonly choices?: readonly string[];
  readonly measures?: readonly Measure[];
  readonly fields?: readonly Field[];
  readonly of_kind?: string;
}

export interface Kind {
  readonly name: string;
  readonly fields: readonly Field[];
  readonly subjects: readonly string[];
  readonly mentions?: readonly string[];
  readonly leans_on?: readonly string[];
  readonly version: number;
  readonly written_by?: "coordinator";
  readonly audience?: "own" | "coordinator";
  readonly one_of?: readonly string[];
  readonly together?: readonly (readonly [string, string])[];
}

export const TABLE_NUMBER = %(table_number)s;

export const SUBJECT_TYPES: readonly SubjectType[] = %(subject_list)s;
"""

_TAIL = """
export type KindName = keyof Bodies;

/** Exactly the fields an entry's fingerprint is taken of, without its kind and body. */
export interface Envelope {
  readonly id: string;
  readonly version: number;
  readonly subjects: readonly string[];
  readonly cooperative: string;
  readonly author: string;
  readonly device: string;
  readonly device_seq: number;
  readonly recorded_at: string;
  readonly tz: string;
  readonly utc_offset_min: number;
  readonly local_date: string;
  readonly seen: string;
  readonly happened_at: string;
  readonly app_version: string;
}

/** A kind with its body: what a screen hands over to be recorded. */
export type Content<K extends KindName = KindName> = {
  [Name in K]: { readonly kind: Name; readonly body: Bodies[Name] };
}[K];

export type Entry<K extends KindName = KindName> = Envelope & Content<K>;
"""


def main(arguments: list[str]) -> int:
    """Write the files, or with --check say which differ; 1 if any does."""
    texts = {PHONE_COPY: phone_copy()}
    if LIST_PAGE.exists():
        texts[LIST_PAGE] = with_list(LIST_PAGE.read_text(encoding="utf-8"))
    if arguments == ["--check"]:
        stale = [path for path, text in texts.items() if _stored(path) != text]
        for path in stale:
            sys.stderr.write(f"{path.relative_to(ROOT)} differs from the table: make kinds\n")
        return 1 if stale else 0
    for path, text in texts.items():
        path.write_text(text, encoding="utf-8", newline="\n")
    return 0


def phone_copy() -> str:
    """The TypeScript file: types of all bodies, and the table as constants."""
    head = _HEAD % {
        "subject_types": _union(SUBJECT_TYPES),
        "units": _union(
            code for code, unit in UNITS.items() if unit.dimension != "temperature"
        ),
        "field_types": _union(get_args(FieldType)),
        "table_number": TABLE_NUMBER,
        "subject_list": json.dumps(SUBJECT_TYPES),
    }
    parts = [head, *(_body_type(kind) for kind in KINDS.values()), _bodies(), _TAIL]
    parts.append(f"\nexport const KINDS: Readonly<Record<KindName, Kind>> = {_kinds()};\n")
    earlier = ", ".join(_constant(kind) for kind in EARLIER_KINDS)
    parts.append(f"\nexport const EARLIER_KINDS: readonly Kind[] = [{earlier}];\n")
    sentences = json.dumps(SENTENCES, indent=2, ensure_ascii=False)
    parts.append(f"\nexport const SENTENCES = {sentences} as const;\n")
    parts.append("\nexport type RefusalKey = keyof typeof SENTENCES;\n")
    return "".join(parts)


def with_list(page: str) -> str:
    """The page with the list of kinds between its two marks; unchanged where it has none."""
    before, begin, rest = page.partition(LIST_BEGIN)
    _, end, after = rest.partition(LIST_END)
    if not begin or not end:
        return page
    return f"{before}{begin}\n\n{kinds_list()}\n{end}{after}"


def kinds_list() -> str:
    """Every kind as one row: its fields, what it is about, who writes and who sees it."""
    rows = [
        "| kind | says | fields (? may be missing) | about | names | written by | seen by |",
        "|---|---|---|---|---|---|---|",
    ]
    for kind in KINDS.values():
        marks = (field.name + ("" if field.is_required else "?") for field in kind.fields)
        cells = (
            f"`{kind.name}` {kind.version}", kind.says, ", ".join(marks), _codes(kind.subjects),
            _codes(kind.mentions), kind.written_by, kind.audience,
        )  # fmt: skip
        rows.append("| " + " | ".join(cells) + " |")
    return "\n".join(rows) + "\n"


def _codes(words: Iterable[str]) -> str:
    return " ".join(f"`{word}`" for word in words)


def _union(words: Iterable[str]) -> str:
    return " | ".join(json.dumps(word) for word in words)


def _camel(name: str) -> str:
    return "".join(word.capitalize() for word in name.split("_"))


def _body_type(kind: Kind) -> str:
    return (
        f"\n/** {kind.says} */\nexport interface {_camel(kind.name)}Body "
        f"{_object_type(kind.fields, indent='')}\n"
    )


def _bodies() -> str:
    lines = (f"  readonly {name}: {_camel(name)}Body;" for name in KINDS)
    return "\nexport interface Bodies {\n" + "\n".join(lines) + "\n}\n"


def _object_type(fields: Iterable[Field], *, indent: str) -> str:
    inner = indent + "  "
    lines = [
        f"{inner}readonly {field.name}: {_type(field, indent=inner)};"
        if field.is_required
        else f"{inner}readonly {field.name}?: {_type(field, indent=inner)} | undefined;"
        for field in fields
    ]
    return "{\n" + "\n".join(lines) + f"\n{indent}}}"


_PLAIN_TYPES = {
    "whole": "number",
    "flag": "boolean",
    "quantity": "Quantity",
    "decimals": "readonly string[]",
    "wholes": "readonly number[]",
    "kind": "KindName",
    "body": "Bodies[KindName]",
}


def _type(field: Field, *, indent: str) -> str:
    if field.type in ("choice", "choices"):
        union = _union(field.choices)
        return union if field.type == "choice" else f"readonly ({union})[]"
    if field.type in ("group", "list"):
        item = _object_type(field.fields, indent=indent)
        return item if field.type == "group" else f"readonly {item}[]"
    if field.type == "changes":
        assert field.of_kind is not None
        own_id = field.of_kind.removesuffix("_defined")
        names = [inner.name for inner in KINDS[field.of_kind].fields if inner.name != own_id]
        return f"{{ readonly [Name in {_union(names)}]?: Change | undefined }}"
    return _PLAIN_TYPES.get(field.type, "string")


def _kinds() -> str:
    lines = [f"  {name}: {_constant(kind)}," for name, kind in KINDS.items()]
    return "{\n" + "\n".join(lines) + "\n}"


def _constant(declared: Kind | Field) -> str:
    """A declaration as a TypeScript object; what has its usual value is left out."""
    parts = []
    for slot in fields_of(declared):
        value = getattr(declared, slot.name)
        always = slot.name in ("version", "subjects")
        if value == slot.default and not always:
            continue
        if slot.name == "says":
            continue  # It stands over the type; the phone shows it nowhere.
        if slot.name == "fields":
            text = "[" + ", ".join(_constant(field) for field in value) + "]"
        else:
            text = json.dumps(value, ensure_ascii=False)
        parts.append(f"{slot.name}: {text}")
    return "{ " + ", ".join(parts) + " }"


def _stored(path: Path) -> str | None:
    return path.read_text(encoding="utf-8") if path.exists() else None


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
