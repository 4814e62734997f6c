"""Where a walk goes: limits, lists, procedures, handoffs, verification, ends."""

from dataclasses import replace

from builder.model.ends import Drive
from builder.plan.drive_advice import DriveAdvice, drive_advice
from builder.reader.trees import read_tree
from builder.walk.events import Rejoin, Verified
from builder.walk.screen import screen
from builder.walk.walk_tables import WalkTables
from tests.walk.conftest import SAMPLES, SHOP, tables_of
from tests.walk.played import after, place, refused, started, typed


def test_at_most_is_counted(samples: WalkTables) -> None:
    """The third charge is not done: the procedure says that it won't take one."""
    state = typed(samples, started(samples, "charging/lamp-on", enter="battery"), "run", "3")
    assert place(state) == "procedures/battery-proof#rest"
    state = typed(samples, state, "11.9 V", "done", "11.9 V", "done")
    assert screen(samples, state)["visit"] == [3, 3]
    state = typed(samples, state, "11.9 V")
    assert place(state) == "charging/lamp-on#unproved"
    assert [entry.result for entry in state.steps][-1] == "won't take a charge"


def test_where_nothing_fits_the_person_to_call_is_shown(samples: WalkTables) -> None:
    """So it is where no result fits; the line of what was seen is in the record."""
    state = typed(samples, started(samples, "charging/lamp-on", enter="belt"), "none it hums")
    shown = screen(samples, state)
    assert shown["end"]["kind"] == "stuck"
    assert shown["call"] == samples.shop["stuck"]
    assert state.steps[-1].seen == "it hums"


def test_an_end_says_why_without_saying_drive_again(samples: WalkTables) -> None:
    """`drive` is that of the head, `why` its own; the customer's sheet has the same."""
    shown = screen(samples, started(samples, "charging/lamp-on", enter="not-today"))
    assert (shown["drive"], shown["why"]) == ("with care", "The cause was not found.")
    tree = read_tree(SAMPLES, SAMPLES / "trees/charging/lamp-on.yml")[0]
    assert tree
    advice = drive_advice(tree, "not-today")
    assert advice == DriveAdvice(Drive.WITH_CARE, "The cause was not found.")


def test_a_procedure_comes_out_with_its_word(samples: WalkTables) -> None:
    """The word is the result of the check that ran it, and both are in the record."""
    state = typed(samples, started(samples, "charging/lamp-on", enter="battery"), "run", "1")
    assert [(one.inside, one.step, one.result) for one in state.steps] == [
        ("procedures/battery-proof", "case", "cracked, swollen, or frozen"),
        ("charging/lamp-on", "battery", "bad"),
    ]
    assert place(state) == "charging/lamp-on#battery-fix"


def test_what_a_procedure_cannot_test_leaves_by_its_caller(samples: WalkTables) -> None:
    """`cannot_test` of the check that runs it is taken."""
    state = typed(samples, started(samples, "charging/lamp-on", enter="control"), "run")
    state = typed(samples, state, "can't test")
    assert place(state) == "charging/lamp-on#unproved"
    assert [one.result for one in state.steps] == ["cannot test", "cannot test"]


def test_a_proof_is_offered_instead_of_run_again(samples: WalkTables) -> None:
    """Another check with the same procedure takes the word; after a fix it is run again."""
    tree = samples.trees["steering/assist-lamp-after-module-swap"]
    by_battery = [id_ for id_, row in tree["steps"].items()
                  if row.get("by", {}).get("procedure") == "battery-proof"]  # fmt: skip
    assert by_battery
    state = typed(samples, started(samples, tree["id"], "tern", enter=by_battery[0]), "run", "3")
    state = typed(samples, state, "12.6 V", "1")
    assert list(state.proved.values()) == [("good", f"{tree['id']}#{by_battery[0]}")]
    again = started(samples, tree["id"], "tern", enter=by_battery[0])
    assert "earlier" in refused(samples, again, "take")


def test_a_proof_ends_with_a_repair(samples: WalkTables) -> None:
    """What was proved before a part was replaced doesn't hold after it."""
    state = typed(samples, started(samples, "charging/lamp-on", "tern", enter="battery"), "run")
    state = typed(samples, state, "3", "12.6 V", "1", "12.1 V", "14 V")
    assert place(state) == "charging/lamp-on#cable"
    assert state.proved == {"battery-proof": ("good", "charging/lamp-on#battery")}
    state = typed(samples, state, "0.9 V")
    assert place(state) == "charging/lamp-on#cable-fix"
    assert state.proved == {}


def test_a_proof_that_does_not_last_is_never_offered(samples: WalkTables) -> None:
    """Zero volts were verified, then power came back: `every_time` has it done again."""
    procedures = {
        name: {**table, "every_time": True} for name, table in samples.shop["procedures"].items()
    }
    tables = replace(samples, shop={**samples.shop, "procedures": procedures})
    state = typed(tables, started(tables, "charging/lamp-on", "tern", enter="battery"), "run")
    state = typed(tables, state, "3", "12.6 V", "1", "12.1 V", "14 V")
    assert place(state) == "charging/lamp-on#cable"
    assert state.proved == {}


def test_a_fix_of_another_tree_offers_to_go_back(samples: WalkTables) -> None:
    """After its verification the walk goes back to the step that handed off."""
    state = typed(samples, started(samples, "charging/lamp-on", enter="running"), "15.6 V")
    state = typed(samples, state, "1", "done", "pass")
    assert screen(samples, state)["rejoin"] == "charging/lamp-on#running"
    state = after(samples, state, Rejoin())
    assert place(state) == "charging/lamp-on#running"
    assert state.left == ()


def test_a_repair_is_verified_by_its_checks(samples: WalkTables) -> None:
    """A check of the tree is run again; its good result passes, and the fix is verified."""
    state = typed(samples, started(samples, "charging/lamp-on", enter="belt"), "2", "done")
    assert place(state) == "charging/lamp-on#running"
    assert screen(samples, state)["verify"]["passes"] == ["within spec"]
    state = typed(samples, state, "14.1 V", "2")
    assert state.end
    assert state.end.verified is True
    assert state.end.step == "belt-fix"


def test_a_failed_verification_goes_on_where_the_fault_is(samples: WalkTables) -> None:
    """Without `still_there` to the first check in `verify`; the second time to the foreman."""
    state = typed(samples, started(samples, "charging/lamp-on", enter="belt"), "2", "done")
    state = typed(samples, state, "12.1 V")
    assert state.end is None
    assert place(state) == "charging/lamp-on#running"
    assert len(state.frames) == 1
    state = typed(samples, state, "14.1 V", "0.1 V", "2", "14.2 V", "2", "1")
    assert place(state) == "charging/lamp-on#belt-fix"
    state = typed(samples, state, "done", "12.1 V")
    assert state.end
    assert state.end.kind == "stuck"


def test_a_test_in_words_is_judged() -> None:
    """`pass` goes to the next test, `fail` to `still_there`."""
    tables = tables_of(SHOP)
    state = typed(tables, started(tables, "wipers/stop-halfway", enter="plug"), "11.0 V", "done")
    assert screen(tables, state)["phase"] == "verify"
    failed = after(tables, state, Verified(passed=False))
    assert place(failed) == "wipers/stop-halfway#plug"
    passed = after(tables, state, Verified(passed=True))
    assert passed.end
    assert passed.end.verified


def test_a_list_is_gone_through_item_by_item() -> None:
    """`next` comes to the next item; after the last one the list is spent."""
    tables = tables_of(SHOP)
    lists = [
        (tree, id_)
        for tree, table in tables.trees.items()
        for id_, row in table["steps"].items()
        if "each" in row
    ]
    assert lists
    for tree, id_ in lists:
        row = tables.trees[tree]["steps"][id_]
        state = started(tables, tree, enter=id_)
        if "asks" in screen(tables, state):
            state = typed(tables, state, "one, two")
        items = []
        while place(state) == f"{tree}#{id_}" and not state.end:
            items.append(screen(tables, state)["item"])
            at = next(at for at, one in enumerate(row["results"]) if one["to"] == "next")
            state = typed(tables, state, f"stated #{at + 1}" if row["readings"] else f"{at + 1}")
        assert len(items) == len(set(items)) > 1
        assert place(state).endswith(f"#{row['spent']}") if "spent" in row else state.end


def test_a_tree_that_is_not_loaded_is_refused(samples: WalkTables) -> None:
    """A page loads the other tree's table first."""
    alone = WalkTables(
        samples.shop,
        {"charging/lamp-on": samples.trees["charging/lamp-on"]},
        samples.conditions,
    )
    state = typed(alone, started(alone, "charging/lamp-on", enter="running"), "read")
    assert "isn't loaded" in refused(alone, state, "15.6 V")


def test_what_was_taken_apart_is_told_at_the_end() -> None:
    """`put_back` of every step that was done comes before the job ends."""
    tables = tables_of(SHOP)
    apart = [
        (tree, id_, row["put_back"])
        for tree, table in tables.trees.items()
        for id_, row in table["steps"].items()
        if "put_back" in row and row["kind"] == "action"
    ]
    assert apart
    for tree, id_, text in apart:
        state = typed(tables, started(tables, tree, enter=id_), "done")
        assert text in state.put_back
