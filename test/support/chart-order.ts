const labels = [
  ...["dLbl", "delete", "numFmt", "spPr", "txPr", "dLblPos", "showLegendKey", "showVal"],
  ...["showCatName", "showSerName", "showPercent", "showBubbleSize", "separator"],
  ...["showLeaderLines", "leaderLines", "extLst"],
];
const axis = [
  ...["axId", "scaling", "delete", "axPos", "majorGridlines", "minorGridlines", "title", "numFmt"],
  ...["majorTickMark", "minorTickMark", "tickLblPos", "spPr", "txPr", "crossAx", "crosses"],
  "crossesAt",
];

/**
 * The order in which elements stand within others, by local name: ISO/IEC 29500-1:2016, the
 * complex types of DrawingML charts (§21.2.2 with Annex A.5.1) and spreadsheet drawings (§20.5 with
 * A.4.3). A name has one meaning in these parts, but for `ser`, which holds the children of both kinds.
 */
export const order: Readonly<Record<string, readonly string[]>> = {
  chartSpace: [
    ...["date1904", "lang", "roundedCorners", "AlternateContent", "style", "clrMapOvr"],
    ...["pivotSource", "protection", "chart", "spPr", "txPr", "externalData", "printSettings"],
    ...["userShapes", "extLst"],
  ],
  chart: [
    ...["title", "autoTitleDeleted", "pivotFmts", "view3D", "floor", "sideWall", "backWall"],
    ...["plotArea", "legend", "plotVisOnly", "dispBlanksAs", "extLst"],
  ],
  title: ["tx", "layout", "overlay", "spPr", "txPr", "extLst"],
  plotArea: ["layout", "scatterChart", "barChart", "catAx", "valAx", "dTable", "spPr", "extLst"],
  layout: ["manualLayout", "extLst"],
  manualLayout: [
    ...["layoutTarget", "xMode", "yMode", "wMode", "hMode", "x", "y", "w", "h", "extLst"],
  ],
  scatterChart: ["scatterStyle", "varyColors", "ser", "dLbls", "axId", "extLst"],
  barChart: [
    ...["barDir", "grouping", "varyColors", "ser", "dLbls", "gapWidth", "overlap", "serLines"],
    ...["axId", "extLst"],
  ],
  ser: [
    ...["idx", "order", "tx", "spPr", "invertIfNegative", "pictureOptions", "marker", "dPt"],
    ...["dLbls", "trendline", "errBars", "cat", "val", "xVal", "yVal", "smooth", "shape", "extLst"],
  ],
  marker: ["symbol", "size", "spPr", "extLst"],
  dLbls: labels,
  numRef: ["f", "numCache", "extLst"],
  strRef: ["f", "strCache", "extLst"],
  numCache: ["formatCode", "ptCount", "pt", "extLst"],
  strCache: ["ptCount", "pt", "extLst"],
  valAx: [...axis, "crossBetween", "majorUnit", "minorUnit", "dispUnits", "extLst"],
  catAx: [...axis, "auto", "lblAlgn", "lblOffset", "noMultiLvlLbl", "extLst"],
  scaling: ["logBase", "orientation", "max", "min", "extLst"],
  legend: ["legendPos", "legendEntry", "layout", "overlay", "spPr", "txPr", "extLst"],
  legendEntry: ["idx", "delete", "txPr", "extLst"],
  txPr: ["bodyPr", "lstStyle", "p"],
  rich: ["bodyPr", "lstStyle", "p"],
  p: ["pPr", "r", "endParaRPr"],
  oneCellAnchor: ["from", "ext", "graphicFrame", "pic", "clientData"],
  twoCellAnchor: ["from", "to", "graphicFrame", "pic", "clientData"],
  graphicFrame: ["nvGraphicFramePr", "xfrm", "graphic"],
};
