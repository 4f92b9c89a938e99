#!/usr/bin/env bash
# Has xmllint hold the parts of workbooks against the schemas of ECMA-376 (transitional), which lie in a folder of yours
# under their own names (sml.xsd, dml-chart.xsd, …): schema.sh FOLDER WORKBOOK... Ends with 1 where a part does not hold.
set -uo pipefail
[ $# -ge 2 ] || { echo "usage: schema.sh FOLDER-OF-XSD WORKBOOK..." >&2; exit 2; }
for program in xmllint unzip; do
  command -v "$program" >/dev/null || { echo "$program is missing: install libxml2-utils and unzip" >&2; exit 2; }
done
schemas=$1
shift
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

schema_of() {
  case $1 in
    xl/charts/chart*.xml) echo dml-chart.xsd ;;
    xl/drawings/drawing*.xml) echo dml-spreadsheetDrawing.xsd ;;
    xl/theme/*.xml) echo dml-main.xsd ;;
    xl/worksheets/sheet*.xml | xl/workbook.xml | xl/styles.xml | xl/sharedStrings.xml | xl/comments*.xml) echo sml.xsd ;;
    docProps/custom.xml) echo shared-documentPropertiesCustom.xsd ;;
    docProps/app.xml) echo shared-documentPropertiesExtended.xsd ;;
  esac
}

status=0
for workbook in "$@"; do
  checked=0
  while IFS= read -r part; do
    schema=$(schema_of "$part")
    [ -n "$schema" ] || continue
    [ -f "$schemas/$schema" ] || { echo "$schemas has no $schema" >&2; exit 2; }
    # what a part declares ignorable, readers of the standard pass over (ISO/IEC 29500-3, 7.2)
    unzip -p "$workbook" "$part" | sed -E 's/ (mc:Ignorable|x14ac:[A-Za-z]+)="[^"]*"//g' >"$scratch/part.xml"
    if said=$(xmllint --noout --nonet --schema "$schemas/$schema" "$scratch/part.xml" 2>&1); then
      checked=$((checked + 1))
    else
      echo "$workbook, $part:"
      head -5 <<<"$said" | cut -c1-300
      status=1
    fi
  done < <(unzip -Z1 "$workbook")
  echo "$workbook: $checked parts hold"
done
exit $status
