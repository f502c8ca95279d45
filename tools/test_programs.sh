#!/bin/sh
# Installs Debian's programs that some tests need, where that can be done; without them those tests say that they were skipped.
set -u
wanted=""
command -v chromium >/dev/null 2>&1 || wanted="$wanted chromium"
command -v pdftoppm >/dev/null 2>&1 || wanted="$wanted poppler-utils"
[ -n "$(ls -d /usr/lib/postgresql/*/bin 2>/dev/null)" ] || command -v postgres >/dev/null 2>&1 || wanted="$wanted postgresql"
[ -z "$wanted" ] && exit 0
if [ "$(id -u)" != 0 ] || ! command -v apt-get >/dev/null 2>&1; then
  echo "not installed, so some tests will be skipped:$wanted"
  exit 0
fi
export DEBIAN_FRONTEND=noninteractive
apt-get update -qq >/dev/null 2>&1
# shellcheck disable=SC2086
apt-get install -y -qq --no-install-recommends $wanted >/dev/null 2>&1 || echo "could not be installed, so some tests will be skipped:$wanted"
exit 0
