"""Fill a shop with invented people and the demo job: run as a program on the shop's own data."""

from __future__ import annotations

from importlib.resources import files

from gageline.shop.starting import start_up

start_up()

from gageline.shop.engine import card_of  # noqa: E402 -- the tables are there only now
from gageline.shop.jobs import current_text, import_job  # noqa: E402 -- the same
from gageline.shop.models import Copy, Cutting, Job, Stick  # noqa: E402 -- the same
from gageline.shop.plans import choose_plan, search, start_plan  # noqa: E402 -- the same
from gageline.shop.racks import save_rack  # noqa: E402 -- the same
from gageline.shop.readings import take  # noqa: E402 -- the same
from gageline.shop.roles import Role  # noqa: E402 -- the same
from gageline.shop.sawing import card_name, strike_saw  # noqa: E402 -- the same
from gageline.shop.signing import add_person, make_owner  # noqa: E402 -- the same
from gageline.shop.sticks import MEASURED, assign, save_part, save_stick  # noqa: E402 -- the same
from gageline.shop.ticking import Stroke, strike  # noqa: E402 -- the same
from gageline.units import System  # noqa: E402 -- the same

owner = make_owner("Ada Example", "a long enough secret")
add_person(owner.name, "Ole Office", Role.OFFICE, "another long secret")
fitter = add_person(owner.name, "Flo Fitter", Role.SHOP, "4711")
add_person(owner.name, "Lee Looker", Role.LOOK, "only here to look")
for name in ("mezzanine.toml", "metric.toml", "mezzanine-frame.toml"):
    job = import_job(owner, (files("gageline") / "demo" / name).read_bytes())
    text = current_text(job)
    for number, copy in enumerate(Copy.objects.filter(piece__job=job).select_related("piece")[:6]):
        card = card_of(text, copy.piece.mark)
        tasks = card.bench[:2] if number == 0 else card.bench + (card.fit if number > 2 else card.fit[:1])
        for task in tasks:
            strike(fitter, Stroke(f"seed-{copy.pk}-{task.code}", copy.pk, copy.piece.card, task.code))

waiting = Copy.objects.select_related("piece").get(pk=4)
for code, value in (("read-1", waiting.piece.length), ("read-2", "0"), ("read-3", "1/16")):
    done = take(fitter, Stroke(f"seed-{code}", waiting.pk, waiting.piece.card, code, note=value))
    assert done.state == "done", done.text

save_rack(owner, (files("gageline") / "demo" / "rack.toml").read_bytes(), None)
beam = Copy.objects.select_related("piece__job").get(piece__mark="B1", number=1, piece__job_id=1)
known = {"mark": "Y1", "stock": beam.piece.stock, "length": beam.piece.length, "heat": "9C0417"}
stick = save_stick(fitter, None, known, 0, System.FT_IN)
assert isinstance(stick, Stick)
assign(fitter, stick, beam)
corners = {"top_near": "-1/4", "top_far": "-1/4", "bottom_near": "0", "bottom_far": "0"}
read = {"left": corners, "camber": "1/2", "camber_way": "up", "units": "ft-in"}
save_part(fitter, Stick.objects.get(pk=stick.pk), MEASURED, read, 2)
plan = start_plan(owner, (Job.objects.get(pk=1),), 5)
search(plan.pk, lambda: False, lambda _words: None)
plan.refresh_from_db()
choose_plan(owner, plan)
for code in ("saw-take", "saw-1"):
    one = Cutting.objects.order_by("pk")[0]
    strike_saw(fitter, Stroke(f"seed-{code}", one.pk, card_name(one), code, note="5521"))
