"""Fifty stations ticking and reading at one shop, and how long they wait.

    python benchmarks/shop_load.py [seconds]

Starts the shop on data of its own and lets 50 signed-in stations, each with a piece of its own, tick a
step, take it back and read card, list and counts without a pause, for 60 seconds. Printed: requests,
errors, ticks lost or doubled (the database is counted against what was acknowledged), and the 95th
percentile of the answers as a ratio to a bare page of Django of the same size under the same load on the
same server in the same run; and the picture redrawn after a change of the form as a ratio to a static file.
"""

from __future__ import annotations

import http.client
import json
import os
import re
import secrets
import socket
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import threading
import time
import urllib.parse
from contextlib import closing
from dataclasses import dataclass, field
from pathlib import Path

STATIONS = 50
SECONDS = float(sys.argv[1]) if len(sys.argv) > 1 else 60.0

SEED = """
from gageline.shop.starting import start_up
start_up()
import sys
from django.contrib.sessions.backends.db import SessionStore
from gageline.shop.jobs import import_job
from gageline.shop.signing import make_owner
owner = make_owner("Ada Example", "a long enough secret")
job = import_job(owner, sys.stdin.buffer.read())
session = SessionStore()
session["_auth_user_id"] = str(owner.pk)
session["_auth_user_backend"] = "gageline.shop.signing.People"
session["_auth_user_hash"] = owner.get_session_auth_hash()
session.save()
print(session.session_key)
"""
BARE = """
import logging, os, sys
logging.getLogger("waitress").setLevel(logging.ERROR)
os.environ["DJANGO_SETTINGS_MODULE"] = "__main__"
ALLOWED_HOSTS = ["localhost"]; SECRET_KEY = "bare"; ROOT_URLCONF = "__main__"; MIDDLEWARE = []
from django.core.wsgi import get_wsgi_application
from django.http import HttpResponse
from django.urls import path
import waitress
body = b"x" * int(sys.argv[2])
urlpatterns = [path("", lambda request: HttpResponse(body))]
waitress.serve(get_wsgi_application(), host="127.0.0.1", port=int(sys.argv[1]), threads=8, _quiet=True)
"""


@dataclass
class Station:
    """One tablet: what it was answered, and how long each answer took."""

    waits: list[float] = field(default_factory=list)
    acknowledged: list[str] = field(default_factory=list)
    errors: list[str] = field(default_factory=list)
    sizes: list[int] = field(default_factory=list)


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def job_text() -> bytes:
    piece = 'mark = "B1"\nquantity = 50\nstock = "W16x26"\nlength = "18\'-7 1/4"\n'
    piece += 'copes = [{ end = "both", length = "4", depth = "1 1/2" }]\n'
    piece += 'angles = [{ end = "both", stock = "L4x3-1/2x5/16", rows = 3 }]\n'
    return f'[job]\nname = "Load"\n[[piece]]\n{piece}'.encode()


def ask(
    line: http.client.HTTPConnection, method: str, path: str, body: bytes | None, headers: dict[str, str]
) -> tuple[int, bytes, float]:
    start = time.perf_counter()
    line.request(method, path, body, headers)
    answer = line.getresponse()
    content = answer.read()
    return answer.status, content, time.perf_counter() - start


def work(port: int, cookie: dict[str, str], copy: int, card: str, station: Station, until: float) -> None:
    line = http.client.HTTPConnection("localhost", port, timeout=60)
    number = 0
    while time.monotonic() < until:
        stroke = {
            "key": f"load-{copy}-{number}", "who": 1, "copy": copy, "card": card, "task": "bench-2",
            "done": number % 2 == 0, "at": "2026-11-25T10:00:00+00:00",
        }  # fmt: skip
        sends: list[tuple[str, str, bytes | None]] = [
            ("POST", "/ticks/", json.dumps({"ticks": [stroke]}).encode())
        ]
        sends += [("GET", f"/bench/{copy}/", None), ("GET", "/counts/", None)] if number % 4 == 0 else []
        for method, path, body in sends:
            headers = cookie | {"Content-Type": "application/json", "Accept": "application/json"}
            try:
                status, content, wait = ask(line, method, path, body, headers)
            except (OSError, http.client.HTTPException) as wrong:
                station.errors.append(repr(wrong))
                line.close()
                continue
            station.waits.append(wait)
            station.sizes.append(len(content))
            if status != 200:
                station.errors.append(f"{path} {status}")
            elif method == "POST" and json.loads(content)["answers"][0]["state"] == "done":
                station.acknowledged.append(str(stroke["key"]))
        number += 1


def read_bare(port: int, station: Station, until: float) -> None:
    line = http.client.HTTPConnection("localhost", port, timeout=60)
    while time.monotonic() < until:
        station.waits.append(ask(line, "GET", "/", None, {})[2])


def crowd(target: object, arguments: list[tuple[object, ...]], seconds: float) -> list[Station]:
    stations = [Station() for _ in arguments]
    until = time.monotonic() + seconds
    threads = [
        threading.Thread(target=target, args=(*words, station, until))  # type: ignore[arg-type] # either of two
        for words, station in zip(arguments, stations, strict=True)
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return stations


def p95(waits: list[float]) -> float:
    return statistics.quantiles(waits, n=20)[-1]


def wait_for(port: int) -> None:
    for _ in range(600):
        try:
            socket.create_connection(("127.0.0.1", port), 1).close()
        except OSError:
            time.sleep(0.1)
        else:
            return
    raise SystemExit("the server did not start")


def form_to_picture(port: int, cookie: dict[str, str], csrf: str) -> float:
    """The median time of a changed form to its new picture, as a ratio to that of a static file."""
    line = http.client.HTTPConnection("localhost", port, timeout=60)
    pictures, files = [], []
    for number in range(40):
        fields = {
            "mark": "B9",
            "stock": "W16x26",
            "length": f"{150 + number}in",
            "holes.0": "1",
            "holes.0.x": "9",
        }
        body = urllib.parse.urlencode(fields | {"holes.0.rows": "2", "csrfmiddlewaretoken": csrf}).encode()
        headers = cookie | {"Content-Type": "application/x-www-form-urlencoded"}
        status, _, wait = ask(line, "POST", "/office/1/picture/", body, headers)
        if status != 200:
            raise SystemExit(f"the picture was answered with {status}")
        pictures.append(wait)
        files.append(ask(line, "GET", "/static/shop/shop.css", None, {})[2])
    picture, static = statistics.median(pictures), statistics.median(files)
    print(f"form change to new picture: {picture * 1000:.0f} ms, static file {static * 1000:.1f} ms")
    return picture / static


def main() -> None:
    with tempfile.TemporaryDirectory() as folder:
        home, port, bare_port = Path(folder) / "home", free_port(), free_port()
        environment = {**os.environ, "GAGELINE_HOME": str(home), "DATABASE_URL": ""}
        seed = [sys.executable, "-c", SEED]
        done = subprocess.run(seed, input=job_text(), env=environment, check=True, capture_output=True)
        csrf = secrets.token_hex(16)
        cookie = {"Cookie": f"gageline={done.stdout.decode().strip()}; csrftoken={csrf}", "X-CSRFToken": csrf}
        serve = [sys.executable, "-m", "gageline", "serve", "--port", str(port)]
        with subprocess.Popen(serve, env=environment, stdout=subprocess.DEVNULL) as shop:
            try:
                wait_for(port)
                line = http.client.HTTPConnection("localhost", port, timeout=60)
                page = ask(line, "GET", "/bench/1/", None, cookie)[1].decode()
                card = re.findall(r'data-card="(\w+)"', page)[0]
                jobs: list[tuple[object, ...]] = [(port, cookie, n, card) for n in range(1, STATIONS + 1)]
                stations = crowd(work, jobs, SECONDS)
                ratio = form_to_picture(port, cookie, csrf)
            finally:
                shop.kill()
        waits = [wait for station in stations for wait in station.waits]
        size = int(statistics.mean(size for station in stations for size in station.sizes))
        with subprocess.Popen([sys.executable, "-c", BARE, str(bare_port), str(size)]) as bare:
            try:
                wait_for(bare_port)
                others = crowd(read_bare, [(bare_port,)] * STATIONS, min(SECONDS, 15.0))
            finally:
                bare.kill()
        report(home, stations, waits, [wait for station in others for wait in station.waits], ratio)


def report(home: Path, stations: list[Station], waits: list[float], bare: list[float], ratio: float) -> None:
    said = {key for station in stations for key in station.acknowledged}
    errors = [error for station in stations for error in station.errors]
    log = "SELECT count(*) FROM shop_logentry WHERE what LIKE '%2. %B1 %'"
    with closing(sqlite3.connect(home / "shop.sqlite3")) as database:
        kept = {key for (key,) in database.execute("SELECT key FROM shop_sent WHERE key LIKE 'load-%'")}
        logged = database.execute(log).fetchone()[0]
    ours, plain = p95(waits), p95(bare)
    print(
        f"{len(stations)} stations, {SECONDS:.0f} s: {len(waits)} requests, {len(errors)} errors {errors[:3]}"
    )
    print(f"ticks acknowledged {len(said)}, lost {len(said - kept)}, doubled {logged - len(kept)}")
    print(f"p95 {ours * 1000:.0f} ms, bare page {plain * 1000:.0f} ms: ratio {ours / plain:.1f}")
    print(f"form change to picture over static file: ratio {ratio:.1f}")


if __name__ == "__main__":
    main()
