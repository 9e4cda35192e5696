"""Which table shows which record."""

from __future__ import annotations

from functools import cache
from typing import Any

from designer.desktop.forms.fields import Table


@cache
def _tables() -> dict[type, Table]:
    from designer.desktop.forms import tables_conditions, tables_drill, tables_rule, tables_rules, tables_things
    from designer.drill.rules import Rule

    return {
        **tables_things.TABLES,
        **tables_conditions.TABLES,
        **tables_rules.TABLES,
        Rule: tables_rule.RULE,
        **tables_drill.TABLES,
    }


def table_of(record: Any) -> Table:
    """Return the rows for ``record``: all that this program knows to be in it, none for an unknown kind."""
    return _tables().get(type(record), ())


def tables() -> dict[type, Table]:
    """Return the table of every type of record that has a form."""
    return dict(_tables())
