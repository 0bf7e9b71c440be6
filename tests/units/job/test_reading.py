from __future__ import annotations

from pathlib import Path

import pytest

from gageline.job import JobProblems, open_job, read_document, read_text

BEAM = '[job]\nname = "t"\n[[piece]]\nmark = "B1"\nstock = "W16x26"\nlength = "10\'-0"\n'


def refusal(path: Path) -> str:
    with pytest.raises(JobProblems) as refused:
        open_job(path)
    return str(refused.value)


def test_a_file_is_read_with_or_without_a_byte_order_mark(tmp_path: Path) -> None:
    file = tmp_path / "job.toml"
    for encoding in ("utf-8", "utf-8-sig"):
        file.write_text(BEAM, encoding=encoding)
        assert read_text(file) == BEAM


def test_lines_that_end_as_on_windows_are_read(tmp_path: Path) -> None:
    file = tmp_path / "job.toml"
    file.write_bytes(BEAM.replace("\n", "\r\n").replace("W16x26", "W16x27").encode())
    assert refusal(file).startswith('line 5: piece "B1" → stock: section "W16x27" is not in the tables')


def test_a_missing_file(tmp_path: Path) -> None:
    assert refusal(tmp_path / "no.toml").endswith("no.toml: there is no such file: check the name")


def test_a_folder(tmp_path: Path) -> None:
    assert refusal(tmp_path).endswith("is a folder: name the job file in it")


def test_a_name_that_no_file_can_have() -> None:
    assert "check the" in refusal(Path("a\0b"))


@pytest.mark.parametrize(
    "content", [b"\x89PNG\r\n\x1a\n\xff\xfe\x00", bytes(range(256)), BEAM.encode("utf-16")]
)
def test_binary_and_utf_16_are_no_text(tmp_path: Path, content: bytes) -> None:
    file = tmp_path / "job.toml"
    file.write_bytes(content)
    assert refusal(file).endswith("is not UTF-8 text: a text file in TOML is expected")


def test_zeros_are_no_toml(tmp_path: Path) -> None:
    file = tmp_path / "job.toml"
    file.write_bytes(bytes(1000))
    assert refusal(file) == "line 1: is not TOML (invalid statement): correct this line or the one before"


def test_a_file_of_100_megabytes_is_refused_without_reading_it_all(tmp_path: Path) -> None:
    file = tmp_path / "job.toml"
    with file.open("wb") as sparse:
        sparse.truncate(100_000_000)
    assert refusal(file).endswith("is larger than 20 MB: split the job")


def test_problems_of_form_alone_come_from_the_document() -> None:
    with pytest.raises(
        JobProblems, match='line 6: piece "B1" → lenght: there is no such key: did you mean "length"'
    ):
        read_document(BEAM.replace("length", "lenght"))


def test_twenty_thousand_pieces_and_no_more() -> None:
    pieces = "".join(f'[[piece]]\nmark = "{number}"\n' for number in range(20_001))
    with pytest.raises(
        JobProblems, match=r"^line 3: piece: has more than 20000 items: give fewer, or split the job$"
    ):
        read_document(f'[job]\nname = "t"\n{pieces}')
