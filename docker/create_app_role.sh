#!/bin/sh
# Runs once, when PostgreSQL makes its folder: the role that serves is not the owner, so that
# row security binds it and it can alter no table.
set -eu
psql --username "$POSTGRES_USER" --dbname kitchenlog --set ON_ERROR_STOP=1 \
  --set password="$APP_PASSWORD" <<'SQL'
CREATE ROLE kitchenlog_app LOGIN NOBYPASSRLS PASSWORD :'password';
ALTER DEFAULT PRIVILEGES IN SCHEMA public
  GRANT SELECT, INSERT, UPDATE, DELETE ON TABLES TO kitchenlog_app;
ALTER DEFAULT PRIVILEGES IN SCHEMA public
  GRANT USAGE ON SEQUENCES TO kitchenlog_app;
SQL
