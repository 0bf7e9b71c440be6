"""Fill a shop with invented people and the demo job: run as a program on the shop's own data."""

from __future__ import annotations

from importlib.resources import files

from gageline.shop.starting import start_up

start_up()

from gageline.shop.engine import card_of  # noqa: E402 -- the tables are there only now
from gageline.shop.jobs import current_text, import_job  # noqa: E402 -- the same
from gageline.shop.models import Copy  # noqa: E402 -- the same
from gageline.shop.roles import Role  # noqa: E402 -- the same
from gageline.shop.signing import add_person, make_owner  # noqa: E402 -- the same
from gageline.shop.ticking import Stroke, strike  # noqa: E402 -- the same

owner = make_owner("Ada Example", "a long enough secret")
add_person(owner.name, "Ole Office", Role.OFFICE, "another long secret")
fitter = add_person(owner.name, "Flo Fitter", Role.SHOP, "4711")
add_person(owner.name, "Lee Looker", Role.LOOK, "only here to look")
for name in ("mezzanine.toml", "metric.toml"):
    job = import_job(owner, (files("gageline") / "demo" / name).read_bytes())
    text = current_text(job)
    for number, copy in enumerate(Copy.objects.filter(piece__job=job).select_related("piece")[:6]):
        card = card_of(text, copy.piece.mark)
        tasks = card.bench[:2] if number == 0 else card.bench + (card.fit if number > 2 else card.fit[:1])
        for task in tasks:
            strike(fitter, Stroke(f"seed-{copy.pk}-{task.code}", copy.pk, copy.piece.card, task.code))
