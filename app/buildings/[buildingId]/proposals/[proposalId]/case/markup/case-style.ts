import { styleString } from "./escaped";

export type Paper = "a4" | "letter";

type Given = { paper: Paper; running: string; foot: string; groups: readonly string[] };

/** The style sheet of a case: ink on white, so that it is the same in grey; its running headers name the sections. */
export function caseStyle({ paper, running, foot, groups }: Given): string {
  const small = "font:8pt 'Case Text',sans-serif;color:#444;";
  const pages = groups
    .map(
      (titles, at) =>
        `@page group${at}{@top-left{content:${styleString(at === 0 ? "" : running)};${small}}@top-right{content:${styleString(at === 0 ? "" : titles)};${small}}}`,
    )
    .join("");
  return `@page{size:${paper === "a4" ? "A4" : "letter"};margin:20mm 18mm 18mm 20mm;@bottom-left{content:${styleString(foot)};${small}}@bottom-right{content:"page " counter(page) " of " counter(pages);${small}}}${pages}${BODY}`;
}

const BODY = `
:root{color-scheme:light}
*{box-sizing:border-box}
html{background:#fff;color:#111;font:10pt/1.4 'Case Text',sans-serif;font-variant-numeric:lining-nums tabular-nums;-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{margin:0}
h1{font-size:20pt;line-height:1.15;margin:2mm 0;font-weight:600}
h2{font-size:14pt;margin:7mm 0 2.5mm;font-weight:600;border-bottom:1px solid #111;padding-bottom:1mm;break-after:avoid}
.group>section:first-of-type>h2{margin-top:0}
h3{font-size:10.5pt;margin:4mm 0 1mm;font-weight:600;break-after:avoid}
p{margin:0 0 2.5mm;max-width:150mm;break-inside:avoid}
ul{margin:0 0 3mm;padding-left:5mm}
li{margin:0 0 1mm;max-width:150mm;break-inside:avoid}
header{margin-bottom:3mm}
.over{color:#444;font-size:9pt;margin:0}
.bar{display:none}
.figures{margin:2mm 0 4mm;display:grid;grid-template-columns:1fr 1fr;column-gap:8mm}
.figures div{border-top:0.5pt solid #999;padding:1.5mm 0 2mm;break-inside:avoid}
dt{font-size:8.5pt;color:#444}
dd{margin:0;font-weight:600;font-size:11.5pt}
dd small{display:block;font-weight:400;font-size:8.5pt;color:#444}
.table,.working{margin:3mm 0 5mm}
.kept{break-inside:avoid}
table{border-collapse:collapse;width:100%;font-size:8.75pt;line-height:1.3}
caption{text-align:left;font-weight:600;font-size:9pt;padding-bottom:1.2mm;break-after:avoid}
thead{display:table-header-group}
tr{break-inside:avoid}
th,td{text-align:left;vertical-align:top;padding:1mm 2.5mm 1mm 0;font-weight:400;border-bottom:0.4pt solid #bbb;overflow-wrap:break-word}
th:last-child,td:last-child{padding-right:0}
thead th{border-bottom:0.8pt solid #111;color:#333;vertical-align:bottom;}
th.number,td.number{text-align:right}
td.number,td.unit{white-space:nowrap}
.total th,.total td{border-top:0.8pt solid #111;border-bottom:none;font-weight:600}
#summary p,#summary ul{margin-bottom:1.5mm}
#summary h3{margin-top:2.5mm}
#summary li{margin-bottom:0.5mm;line-height:1.3}
#summary .figures{margin:1mm 0 2mm}
#summary .figures div{padding:1mm 0 1.2mm}
#summary .table{margin:1mm 0 0}
#table-decision td,#table-decision tbody th{height:11mm}
figure{margin:3mm 0 4mm;break-inside:avoid}
figcaption{font-size:9pt;font-weight:600;margin-top:1mm}
svg{display:block;width:100%;height:auto}
text{font-family:'Case Text',sans-serif;font-size:12px;fill:#111}
text.halo{paint-order:stroke;stroke:#fff;stroke-width:3px}
.formula{font-size:10.5pt;margin:0 0 1.5mm;break-after:avoid}
sub,sup{font-size:70%;line-height:0}
.note{font-size:8.5pt;color:#333;margin:1.5mm 0 0}
@media screen{
body{max-width:190mm;margin:0 auto;padding:8mm}
.bar{display:block;border-bottom:1px solid #999;padding-bottom:2mm;margin-bottom:6mm;max-width:none}
.group+.group{margin-top:12mm}
.table,.working{overflow-x:auto}
}
@media screen and (max-width:640px){
.figures{grid-template-columns:1fr}
body{padding:4mm}
table{min-width:130mm}
figure{overflow-x:auto}
svg{min-width:130mm}
}`;
