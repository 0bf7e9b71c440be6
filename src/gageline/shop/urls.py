"""The addresses of the shop."""

from __future__ import annotations

from pathlib import Path

from django.http import HttpRequest, HttpResponse
from django.urls import path
from django.views.decorators.http import require_GET

from gageline.shop import floor, framing, inspecting, office, people, pieces, saw, strengths, yard

__all__ = ["urlpatterns", "worker"]

_WORKER = Path(__file__).parent / "static" / "shop" / "worker.js"


@require_GET
def worker(_request: HttpRequest) -> HttpResponse:
    """The script that keeps opened cards for when there is no network; it stands at the root to see them."""
    return HttpResponse(_WORKER.read_text("utf8"), content_type="text/javascript; charset=utf-8")


urlpatterns = [
    path("", people.home, name="home"),
    path("first/", people.first, name="first"),
    path("in/", people.sign_in, name="sign-in"),
    path("in/shop/", people.sign_in_shop, name="sign-in-shop"),
    path("out/", people.sign_out, name="sign-out"),
    path("worker.js", worker, name="worker"),
    path("people/", people.list_people, name="people"),
    path("people/<int:pk>/", people.change, name="person"),
    path("tablets/", people.list_tablets, name="tablets"),
    path("tablets/<int:pk>/forget/", people.forget, name="tablet-forget"),
    path("counts/", floor.counts, name="counts"),
    path("length/", pieces.echo_length, name="echo"),
    path("office/", office.list_jobs, name="jobs"),
    path("office/new/", office.new_job, name="job-new"),
    path("office/import/", office.import_document, name="job-import"),
    path("office/<int:pk>/", office.show_job, name="job"),
    path("office/<int:pk>/facts/", office.facts_form, name="job-facts"),
    path("office/<int:pk>/facts/said/", office.look_facts, name="job-facts-look"),
    path("office/<int:pk>/text/", framing.edit_text, name="job-text"),
    path("office/<int:pk>/strength/", strengths.show, name="job-strength"),
    path("office/<int:pk>/frame/", framing.show, name="frame"),
    path("office/<int:pk>/frame/grid/", framing.edit_grid, name="frame-grid"),
    path("office/<int:pk>/frame/<slug:kind>/", framing.new, name="frame-new"),
    path("office/<int:pk>/frame/<slug:kind>/look/", framing.look, name="frame-look"),
    path("office/<int:pk>/frame/<slug:kind>/of/<str:name>/", framing.edit, name="frame-edit"),
    path("office/<int:pk>/frame/<slug:kind>/of/<str:name>/remove/", framing.remove, name="frame-remove"),
    path("office/<int:pk>/document.toml", office.export, name="job-export"),
    path("office/<int:pk>/print/<slug:name>.pdf", office.print_pdf, name="job-print"),
    path("office/<int:pk>/parts.csv", office.parts, name="job-parts"),
    path("office/<int:pk>/labels/", office.labels, name="job-labels"),
    path("office/<int:pk>/log/", office.history, name="job-log"),
    path("office/<int:pk>/back/<int:number>/", office.undo, name="job-undo"),
    path("office/<int:pk>/piece/", pieces.new, name="piece-new"),
    path("office/<int:pk>/picture/", pieces.picture, name="piece-picture"),
    path("office/<int:pk>/piece/<int:piece>/", pieces.edit, name="piece-edit"),
    path("office/<int:pk>/piece/<int:piece>/remove/", pieces.remove, name="piece-remove"),
    path("office/<int:pk>/piece/<int:piece>/back/<int:number>/", pieces.undo, name="piece-undo"),
    path("piece/<int:piece>/", pieces.show, name="piece"),
    path("piece/<int:piece>/odds/", inspecting.odds, name="piece-odds"),
    path("piece/<int:piece>/solid/", pieces.solid, name="piece-solid"),
    path("piece/<int:piece>/true-size.dxf", pieces.true_size, name="piece-dxf"),
    path("yard/", yard.list_sticks, name="yard"),
    path("yard/new/", yard.new_stick, name="yard-new"),
    path("yard/said/<slug:part>/", yard.say_stick, name="yard-said"),
    path("yard/rack/", yard.edit_rack, name="yard-rack"),
    path("yard/rack.toml", yard.export_rack, name="yard-export"),
    path("yard/sticks.csv", yard.spreadsheet, name="yard-csv"),
    path("yard/<int:stick>/", yard.show_stick, name="yard-stick"),
    path("yard/<int:stick>/edit/", yard.edit_stick, name="yard-edit"),
    path("yard/<int:stick>/measure/", yard.measure, name="yard-measure"),
    path("yard/<int:stick>/piece/", yard.assign_stick, name="yard-assign"),
    path("yard/<int:stick>/way/", yard.take_way, name="yard-way"),
    path("yard/<int:stick>/odds/", yard.odds, name="yard-odds"),
    path("yard/<int:stick>/card.pdf", yard.print_card, name="yard-card"),
    path("yard/<int:stick>/remove/", yard.remove, name="yard-remove"),
    path("yard/<int:stick>/back/<int:number>/", yard.take_back, name="yard-back"),
    path("saw/", saw.show, name="saw"),
    path("saw/plan/", saw.new_plan, name="saw-new"),
    path("saw/plan/<int:plan>/", saw.show_plan, name="saw-plan"),
    path("saw/plan/<int:plan>/stop/", saw.stop, name="saw-stop"),
    path("saw/plan/<int:plan>/choose/", saw.choose, name="saw-choose"),
    path("saw/plan/<int:plan>/sheets.pdf", saw.print_plan, name="saw-print"),
    path("saw/<int:cutting>/", saw.card, name="saw-card"),
    path("bench/", floor.bench, name="bench"),
    path("bench/<int:copy>/", floor.card, name="bench-card"),
    path("fit/", floor.fit, name="fit"),
    path("fit/<int:copy>/", floor.fit_card, name="fit-card"),
    path("check/", inspecting.list_waiting, name="check"),
    path("check/<int:copy>/", inspecting.card, name="check-card"),
    path("check/<int:copy>/outcome/", inspecting.outcome, name="check-outcome"),
    path("check/<int:copy>/sheet.pdf", inspecting.print_pdf, name="check-print"),
    path("gate/", floor.gate, name="gate"),
    path("gate/<int:copy>/send/", floor.send, name="gate-send"),
    path("gate/<int:copy>/back/", floor.take_in_again, name="gate-back"),
    path("ticks/", floor.ticks, name="ticks"),
    path("tick/", floor.tick, name="tick"),
]
