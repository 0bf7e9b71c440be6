from __future__ import annotations

from importlib.resources import files

from gageline.shop.engine import card_key, card_of, document_of, findings_of, findings_on
from gageline.shop.jobs import current_text
from gageline.shop.models import Job


def test_the_card_holds_every_step_once_and_the_welds_last(demo: Job) -> None:
    text = current_text(demo)
    card = card_of(text, "B2")
    numbers = [task.step.number for task in (*card.bench, *card.fit) if task.step]
    assert numbers == list(range(1, len(numbers) + 1))
    assert card.fit[0].step is not None
    assert all("Set the" not in task.words for task in card.bench)
    welds = [task for task in card.fit if task.weld]
    assert card.fit[-len(welds) :] == tuple(welds)
    assert card.tasks("gate") == ()


def test_a_piece_without_fittings_has_nothing_to_fit(job: Job) -> None:
    assert card_of(current_text(job), "P1").fit == ()


def test_the_key_changes_with_what_is_struck_and_with_nothing_else(job: Job) -> None:
    text = current_text(job)

    def key(changed: str, mark: str = "B1") -> str:
        document = document_of(changed)
        return card_key(document, next(piece for piece in document.pieces if piece.mark == mark))

    assert key(text.replace("quantity = 2", "quantity = 3")) == key(text)
    assert key(text.replace("9'-6", "9'-7")) != key(text)
    assert key(text.replace("9'-6", "9'-7"), "P1") == key(text, "P1")
    assert key(f'{text}\n[practice]\ntape = "1/8"\n') != key(text)


def test_an_opposite_hand_follows_its_original(demo: Job) -> None:
    text = current_text(demo)
    document = document_of(text)
    other = document_of(text.replace("11'-4 5/8", "11'-4 3/4"))
    hand = next(number for number, piece in enumerate(document.pieces) if piece.mark == "B3")
    assert card_key(document, document.pieces[hand]) != card_key(other, other.pieces[hand])
    assert isinstance(findings_of(text), tuple)


def test_a_finding_of_an_end_of_the_frame_stands_with_its_piece_in_the_words_of_the_card() -> None:
    given = files("gageline").joinpath("demo", "mezzanine-frame.toml").read_text("utf-8")
    text = given.replace('name = "B4"\n', 'name = "B4"\nstart = { rows = 5 }\n')
    found = [one.text() for one in findings_on(text, "B4")]
    assert any(text.startswith("error: B4 start (left end): 5 rows are given") for text in found)
    assert len(found) == len(set(found))
    assert findings_on(text, "B3") == ()
