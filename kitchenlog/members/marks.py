"""Signs that people copy by hand: device marks and join codes."""

import hashlib
from collections.abc import Collection
from itertools import product
from random import Random

# No 0 O, 1 I L, 2 Z, 5 S, 8 B, U: each is taken for another on a wet label.
SIGNS = "ACDEFGHJKMNPQRTVWXY34679"
CODE_SIGNS = 10
# The first sign of a code says whether it is for somebody new or one member, so that the phone
# asks a member for nothing but a new passphrase. Its twin: frontend/src/sync/join_codes.ts.
_LETTERS = "".join(sign for sign in SIGNS if sign.isalpha())
_DIGITS = "".join(sign for sign in SIGNS if sign.isdigit())


def free_mark(taken: Collection[str], chance: Random) -> str | None:
    """Two signs that no device of the cooperative has had; None when all 576 are gone.

    By chance and not in turn, so that a label says nothing of how many devices there are.
    """
    free = [mark for pair in product(SIGNS, SIGNS) if (mark := "".join(pair)) not in taken]
    return chance.choice(free) if free else None


def new_code(chance: Random, *, is_for_member: bool) -> str:
    """Ten signs, at least 43 bits: far out of reach at five tries a minute for half an hour."""
    first = chance.choice(_DIGITS if is_for_member else _LETTERS)
    return first + "".join(chance.choice(SIGNS) for _ in range(CODE_SIGNS - 1))


def code_hash(code: str) -> str:
    """What is kept of a code. Case, spaces and dashes are how people copy, not the code."""
    plain = "".join(sign for sign in code.upper() if sign.isalnum())
    return hashlib.sha256(plain.encode("utf-8", "replace")).hexdigest()
