#!/usr/bin/env bash
# Opens a bid in a window of 1366 x 768 at 100 % and takes a picture of each sheet in sight, so that one sees what
# is seen without scrolling. Needs LibreOffice, Xvfb, xdotool and ImageMagick, which the tests do not.
# Usage: npm run screens -- bid.xlsx folder
set -euo pipefail
bid=$(realpath "${1:?give a bid, such as bid.xlsx}")
into=${2:?give a folder for the pictures}
for program in soffice Xvfb xdotool import unzip; do
  command -v "$program" >/dev/null || { echo "$program is missing: apt-get install libreoffice-calc xvfb xdotool imagemagick unzip" >&2; exit 1; }
done
mkdir -p "$into"
scratch=$(mktemp -d)
trap 'kill $office $screen 2>/dev/null || true; wait 2>/dev/null || true; rm -rf "$scratch"' EXIT
office= screen=

cp "$bid" "$scratch/bid.xlsx"
mkdir -p "$scratch/profile/user"
cat > "$scratch/profile/user/registrymodifications.xcu" <<'XML'
<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Setup/Office"><prop oor:name="ooSetupInstCompleted" oor:op="fuse"><value>true</value></prop></item>
<item oor:path="/org.openoffice.Office.Common/Misc"><prop oor:name="ShowTipOfTheDay" oor:op="fuse"><value>false</value></prop></item>
<item oor:path="/org.openoffice.Office.Common/Misc"><prop oor:name="FirstRun" oor:op="fuse"><value>false</value></prop></item>
<item oor:path="/org.openoffice.Setup/Office/Factories/org.openoffice.Setup:Factory['com.sun.star.sheet.SpreadsheetDocument']"><prop oor:name="ooSetupFactoryWindowAttributes" oor:op="fuse"><value>0,0,1366,768;1;0,0,1366,768;</value></prop></item>
</oor:items>
XML

# the first free display from 90 on
number=90
while [ -e "/tmp/.X$number-lock" ]; do number=$((number + 1)); done
export DISPLAY=":$number"
Xvfb "$DISPLAY" -screen 0 1366x768x24 >/dev/null 2>&1 & screen=$!
sleep 1
soffice --norestore --nologo "-env:UserInstallation=file://$scratch/profile" "$scratch/bid.xlsx" >/dev/null 2>&1 & office=$!

window=
for _ in $(seq 120); do
  window=$(xdotool search --name 'bid.xlsx' 2>/dev/null | tail -1 || true)
  [ -n "$window" ] && break
  sleep 1
done
[ -n "$window" ] || { echo "LibreOffice opened no window for $bid" >&2; exit 1; }
sleep "${SETTLE:-6}"
xdotool windowmove "$window" 0 0 windowsize "$window" 1366 768 windowfocus "$window" || true
# without the side bar, which only this program has
xdotool key ctrl+F5
sleep 2

# tabs in sight, in their order
mapfile -t sheets < <(unzip -p "$bid" xl/workbook.xml | grep -o '<sheet [^>]*>' | grep -vE 'state="(h|veryH)idden"' | sed 's/.* name="\([^"]*\)".*/\1/')
for place in "${!sheets[@]}"; do
  name=$(printf '%02d-%s' "$place" "${sheets[place]}" | tr ' /' '--')
  import -window root "$into/$name.png"
  echo "$into/$name.png"
  xdotool key ctrl+Next
  sleep "${PAUSE:-2}"
done
