#!/usr/bin/env bash
# Draws the pictures of the README from the hillside demo, by LibreOffice and poppler, and notes what they show.
set -euo pipefail
cd "$(dirname "$0")/../.."
folder=$(mktemp -d)
trap 'rm -r "$folder"' EXIT
npm run build >/dev/null
node dist/engine/cli/main.js bid sheets/demo/hillside-stream.json -o "$folder/bid.xlsx" >/dev/null 2>&1
soffice --headless "-env:UserInstallation=file://$folder/profile" --convert-to pdf --outdir "$folder" "$folder/bid.xlsx" >/dev/null

# the number of the first page that a sheet takes: its name stands in the middle of the foot
page_of() {
  local count page
  count=$(pdfinfo "$folder/bid.pdf" | awk '/^Pages:/ { print $2 }')
  for ((page = 1; page <= count; page++)); do
    if pdftotext -layout -f "$page" -l "$page" "$folder/bid.pdf" - | grep -qE "^ *Job .* $1  +Page "; then
      echo "$page"
      return
    fi
  done
  echo "no page of sheet $1" >&2
  exit 1
}

draw() { # name, sheet, dots an inch, more options of pdftoppm
  local name=$1 page
  page=$(page_of "$2")
  pdftoppm -png -r "$3" -f "$page" -l "$page" -singlefile "${@:4}" "$folder/bid.pdf" "sheets/demo/pictures/$name"
}

mkdir -p sheets/demo/pictures
draw summary Summary 64
draw proposal Proposal 64
draw profile Falls 96 -x 40 -y 112 -W 736 -H 275
UPDATE_PICTURES=1 npx vitest run --config test/vitest.config.ts --project 'unit*' test/house/pictures.test.ts >/dev/null
ls -l sheets/demo/pictures
