"""A subject, `type:id`, taken apart."""


def type_in(subject: str) -> str:
    """The part before the first colon; all of it where there is none."""
    return subject.partition(":")[0]


def id_in(subject: str) -> str:
    """The part after the first colon, which may hold another: a day's does."""
    return subject.partition(":")[2]
