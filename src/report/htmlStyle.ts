/** Style of the saved HTML report: warm paper, ink, one accent; prints to Letter and A4. */
export const reportStyle = `
:root{--r-paper:#fbf8f1;--r-ink:#23211d;--r-soft:#5c564b;--r-line:#cfc7b6;--r-accent:#8a3b12;--r-panel:#f3eddf}
*{box-sizing:border-box}
body{margin:0;background:var(--r-paper);color:var(--r-ink);font:1rem/1.5 "Source Sans 3","Source Sans Pro",system-ui,sans-serif;font-variant-numeric:tabular-nums lining-nums}
main{max-width:58rem;margin:0 auto;padding:2rem 1.25rem 4rem}
h1,h2,h3{font-family:"Source Serif 4","Source Serif Pro",Georgia,serif;line-height:1.2;font-weight:600;overflow-wrap:anywhere}
h1{font-size:2rem;margin:0 0 .5rem}
h2{font-size:1.5rem;margin:3rem 0 .75rem;border-top:2px solid var(--r-ink);padding-top:.6rem}
h3{font-size:1.15rem;margin:1.75rem 0 .5rem}
p,ul,ol,dl{margin:.5rem 0;max-width:44rem;overflow-wrap:anywhere}
.lead{font-size:1.15rem}.small,.note,.from,figcaption{font-size:.875rem;color:var(--r-soft)}
a{color:var(--r-accent);text-underline-offset:.15em}
dl.facts{display:grid;grid-template-columns:repeat(auto-fill,minmax(13rem,1fr));gap:.25rem 1.25rem;max-width:none}
dl.facts dt{font-size:.8rem;color:var(--r-soft)}dl.facts dd{margin:0}
.figures{list-style:none;padding:0;display:grid;grid-template-columns:repeat(auto-fit,minmax(12rem,1fr));gap:.75rem;max-width:none}
.figures li{border:1px solid var(--r-line);border-top:3px solid var(--r-ink);background:#fff;padding:.6rem .75rem}
.figures p{margin:.15rem 0}.figures .label{font-size:.875rem}.figures .value{font-size:1.6rem;font-family:"Source Serif 4",Georgia,serif}
.sides{display:grid;grid-template-columns:repeat(auto-fit,minmax(16rem,1fr));gap:0 2rem;max-width:none}
.verdict{white-space:nowrap;font-weight:600}.verdict.misses{color:#8f1d14}
.scroll{overflow-x:auto;margin:1rem 0}
table{border-collapse:collapse;width:100%;font-size:.92rem}
caption{text-align:left;font-weight:600;padding:.25rem 0}
th,td{border-bottom:1px solid var(--r-line);padding:.35rem .5rem;vertical-align:top;text-align:left}
th.right,td.right{text-align:right}thead th{border-bottom:2px solid var(--r-ink)}tbody th{font-weight:400}.sum>*{font-weight:600;border-top:1px solid var(--r-ink)}
figure{margin:1rem 0}figure svg{max-width:100%;height:auto;background:#fff;border:1px solid var(--r-line)}
.plot .narrow{display:none}.plot summary{cursor:pointer;min-height:1.75rem;font-size:.875rem}
@media (max-width:40rem){.plot .wide{display:none}.plot .narrow{display:block}}
.callout{border:1px solid var(--r-line);border-left:4px solid var(--r-ink);background:var(--r-panel);padding:.5rem .9rem;margin:.75rem 0;max-width:46rem}
.callout.stop{border-left:10px double #8f1d14}.callout.strong{border-left-width:8px}.callout.engineer{border-left-style:dashed}
.callout p{margin:.25rem 0}.defer{font-style:italic}
.steps>li{margin:.75rem 0}.steps p{margin:.15rem 0}.who{font-size:.875rem;color:var(--r-soft)}
.hold{border:2px solid var(--r-ink);padding:.4rem .75rem;margin:.5rem 0;background:#fff}.sign .line{display:inline-block;width:9rem;border-bottom:1px solid var(--r-ink)}
.card{border:1px dashed var(--r-ink);padding:.75rem 1rem;margin:1rem 0;background:#fff}
.working{border-top:1px solid var(--r-line);padding:.75rem 0}.formula{font-family:"Source Serif 4",Georgia,serif;font-size:1.1rem}
pre{white-space:pre-wrap;overflow-wrap:anywhere;background:var(--r-panel);padding:.5rem}
.sources dt{font-weight:600;margin-top:.5rem}.sources dd{margin:0}
nav ol{columns:2}
@page{margin:18mm 16mm}
@media print{.plot .wide{display:block}.plot .narrow{display:none}.plot details::details-content{content-visibility:visible;height:auto}body{background:#fff;font-size:10pt}main{max-width:none;padding:0}a{color:inherit;text-decoration:none}
h2{break-after:avoid;margin-top:1.5rem}h3,caption{break-after:avoid}.new-page{break-before:page}
.figures li,.callout,.card,.hold,figure,tr,.working{break-inside:avoid}thead{display:table-header-group}.scroll{overflow:visible}p{orphans:3;widows:3}}
`;
