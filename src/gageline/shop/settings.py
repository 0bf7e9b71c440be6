"""Django's settings for the shop, from the environment and the data folder."""

from __future__ import annotations

import os
from pathlib import Path

from django.utils.functional import SimpleLazyObject

from gageline.sheets import FONT_FOLDER
from gageline.shop.home import data_folder, database, secret_key

_HERE = Path(__file__).parent
HOME = data_folder()

SECRET_KEY = SimpleLazyObject(lambda: secret_key(HOME))
DEBUG = False
ALLOWED_HOSTS = ["localhost", "127.0.0.1", "[::1]", *os.environ.get("GAGELINE_HOSTS", "").split()]
CSRF_TRUSTED_ORIGINS = os.environ.get("GAGELINE_ORIGINS", "").split()
DATABASES = {"default": database(os.environ.get("DATABASE_URL", ""), HOME)}
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"
INSTALLED_APPS = [
    "django.contrib.contenttypes",
    "django.contrib.auth",
    "django.contrib.sessions",
    "django.contrib.staticfiles",
    "django_htmx",
    "gageline.shop",
]
MIDDLEWARE = [
    "gageline.shop.guard.Limits",
    "gageline.shop.guard.Headers",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "django.contrib.sessions.middleware.SessionMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.contrib.auth.middleware.AuthenticationMiddleware",
    "django_htmx.middleware.HtmxMiddleware",
    "gageline.shop.guard.Gatekeeper",
]
ROOT_URLCONF = "gageline.shop.urls"
TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "DIRS": [_HERE / "templates"],
        "OPTIONS": {
            "context_processors": ["gageline.shop.places.strip"],
            "builtins": ["gageline.shop.filters", "django.templatetags.static"],
        },
    }
]
AUTH_USER_MODEL = "shop.Person"
AUTHENTICATION_BACKENDS = ["gageline.shop.signing.People"]

SESSION_COOKIE_NAME = "gageline"
SESSION_COOKIE_AGE = 12 * 3600  # seconds; a shift and its overtime
SESSION_COOKIE_HTTPONLY = True
SESSION_COOKIE_SAMESITE = "Lax"
SESSION_SERIALIZER = "django.contrib.sessions.serializers.JSONSerializer"
CSRF_COOKIE_SAMESITE = "Strict"
CSRF_FAILURE_VIEW = "gageline.shop.guard.stale_form"
SECURE_CONTENT_TYPE_NOSNIFF = True
DATA_UPLOAD_MAX_MEMORY_SIZE = 2_500_000  # bytes of a form without its files
DATA_UPLOAD_MAX_NUMBER_FIELDS = 20_000
FILE_UPLOAD_MAX_MEMORY_SIZE = 1_000_000

STATIC_URL = "/static/"
STATICFILES_DIRS = [_HERE / "static", ("fonts", FONT_FOLDER)]
STATICFILES_FINDERS = [
    "django.contrib.staticfiles.finders.FileSystemFinder",
    "django.contrib.staticfiles.finders.AppDirectoriesFinder",
]
WHITENOISE_USE_FINDERS = True
WHITENOISE_MAX_AGE = 3600
USE_TZ = True
TIME_ZONE = "UTC"
LANGUAGE_CODE = "en"
USE_I18N = False
LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "handlers": {"console": {"class": "logging.StreamHandler"}},
    "loggers": {"django": {"handlers": ["console"], "level": "ERROR"}},
}
