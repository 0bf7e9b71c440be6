from __future__ import annotations

from django.conf import settings
from django.core.management import call_command

from gageline.shop import settings as written


def test_nothing_is_open_that_should_be_shut() -> None:
    assert settings.DEBUG is False
    assert settings.SESSION_COOKIE_HTTPONLY
    assert settings.SESSION_COOKIE_AGE <= 12 * 3600
    assert "*" not in written.ALLOWED_HOSTS
    assert "django.middleware.csrf.CsrfViewMiddleware" in settings.MIDDLEWARE
    assert len(str(settings.SECRET_KEY)) > 50


def test_django_finds_nothing_wrong_with_them() -> None:
    call_command("check", fail_level="WARNING")
