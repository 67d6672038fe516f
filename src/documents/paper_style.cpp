#include "documents/paper_style.h"

#include <algorithm>

#include "drawing/colour.h"

namespace stile::documents {
namespace {

// Everything both readers share. Tick boxes are 10 mm; the notice with cut corners stands for "shut".
constexpr const char* kCommon = R"css(
*{box-sizing:border-box}
html{background:#fff;-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{margin:0 auto;background:#fff;color:var(--ink);font-family:"Clear Sans","Noto Sans",Arial,sans-serif;overflow-wrap:break-word}
h1,h2,h3,p,ul,ol,dl,dd,figure{margin:0;padding:0}
svg{display:block;max-width:100%;height:auto}
header{display:flex;justify-content:space-between;align-items:flex-end;gap:.4em 1.6em;border-bottom:3px solid var(--post);padding-bottom:.5em}
.name{display:flex;gap:.7em;align-items:center}
.mark{flex:none}
.about{text-align:right;margin-left:auto;flex:none}
.about .who{font-weight:700}
.blank{display:inline-block;min-width:14em;border-bottom:1.3px solid var(--ink);height:1.1em}
main{padding-top:.55em}
h2{break-after:avoid}
section.page{break-before:page}
section+section>.box:first-child{margin-top:.9em}
section>*+*,.box>*+*,.column>*+*{margin-top:.45em}
.statement{font-weight:700}
.small,.note{color:var(--ink2)}
ul,ol{padding-left:1.4em}
ol{padding-left:1.9em}
section>ul,section>ol{break-inside:avoid}
li+li{margin-top:.12em}
.rows{width:100%;border-collapse:collapse}
.rows th,.rows td{text-align:left;vertical-align:top;padding:.28em 1em .28em 0;border-bottom:1px solid var(--hair)}
.rows th{font-weight:700}
.rows td:last-child{padding-right:0}
.rows tr{break-inside:avoid}
.grid,.plain{width:100%;border-collapse:collapse}
.plain th,.plain td{text-align:left;vertical-align:top;padding:.28em 1em .28em 0;border-bottom:1px solid var(--hair)}
.plain thead th{border-bottom:1.5px solid var(--post)}
.grid{table-layout:fixed;break-inside:avoid}
.grid th,.grid td{border:1.5px solid var(--ink);text-align:center;vertical-align:middle;padding:.3mm 1mm}
.grid th:first-child{text-align:left;width:34%;padding-left:.5em}
.grid tbody th{font-weight:400}
.incolumns{columns:2;column-gap:1.6em}
.incolumns li{break-inside:avoid}
.grid tr,.plain tr{break-inside:avoid}
.tick{display:inline-block;width:10mm;height:10mm;border:1.6px solid var(--ink);vertical-align:middle}
.rest{color:var(--ink2)}
.columns{display:flex;flex-wrap:wrap;gap:1.1em 1.7em;align-items:flex-start}
.column{min-width:15em}
.box{break-inside:avoid;border:1.5px solid var(--edge);padding:.5em .9em}
.box h3{break-after:avoid}
.box h2{margin:0;border:0;padding:0}
.emergency{border:5px solid var(--ink)}
.emergency h3::before,.emergency h2::before{content:"";display:inline-block;width:1.05em;height:1.05em;margin-right:.45em;vertical-align:-.15em;background:linear-gradient(#fff,#fff) center/62% 24% no-repeat,var(--ink)}
.stop{border:0;border-left:5px solid var(--post);padding:.2em 0 .2em .9em}
.notfornow{border:0;padding:.75em 1.1em .8em;background:var(--shut);position:relative;clip-path:polygon(20px 0,calc(100% - 20px) 0,100% 20px,100% 100%,0 100%,0 20px)}
.notfornow::before{content:"";position:absolute;inset:2.5px;background:var(--shutTint);clip-path:polygon(19px 0,calc(100% - 19px) 0,100% 19px,100% 100%,0 100%,0 19px)}
.notfornow>*{position:relative}
.notfornow h3,.notfornow h2{color:var(--shut)}
.notfornow .rows th,.notfornow .rows td{border-bottom-color:var(--shut)}
.notfornow .rows tr:last-child th,.notfornow .rows tr:last-child td{border-bottom:0}
.question{border:0;padding:.15em 0 0}
.question h3{font-size:1em;line-height:inherit}
.question>*+*{margin-top:.2em}
.blankcell{height:10mm}
.held{border:2px dashed var(--hatch);background:var(--hatchGround)}
.exercise{border:0;border-left:4px solid var(--post);padding:.1em 0 .1em .9em}
.dose{background:var(--openTint);padding:.25em .7em;font-weight:700}
details>summary{cursor:pointer;padding:.35em 0;font-weight:700}
details>summary:focus-visible{outline:3px solid var(--focus);outline-offset:3px}
.writeline{display:flex;gap:.7em;align-items:flex-end;margin-top:1.7em}
.writeline span:last-child{flex:1;border-bottom:1.3px solid var(--ink);height:1.1em}
.logo{height:2.6em;width:auto;flex:none}
.exercise h3 .number{display:inline-block;min-width:1.5em;text-align:center;background:var(--ink);color:#fff;margin-right:.3em}
.pictured{display:flex;gap:1.2em;align-items:flex-start;border-left:0;padding-left:0}
.pictured>div{flex:1}
.pictured>.picture{flex:0 0 34%;border:2px solid var(--ink);padding:6px}
.compact{columns:2;column-gap:1.6em}
.compact p{break-inside:avoid}
.compact p+p{margin-top:.22em}
.choices{display:flex;gap:.4em 1em;align-items:baseline;flex-wrap:wrap}
.choices ul{list-style:none;display:flex;flex-wrap:wrap;gap:.3em 1.3em;padding:0}
.choices.single ul{flex-direction:column}
.choices li{display:flex;align-items:baseline;gap:.5em}
.choices li::before{content:"";flex:none;width:.95em;height:.95em;border:1.4px solid var(--ink);align-self:center}
.cut{display:flex;justify-content:space-between;align-items:baseline;gap:1.5em;border-top:2px dashed var(--ink);margin-top:1.2em!important;padding-top:.5em;break-after:avoid}
.cut h2{border:0!important;padding:0!important;margin:0!important}
footer{border-top:1.5px solid var(--edge);color:var(--ink2)}
@media screen{body{max-width:210mm;padding:9mm 8mm 12mm}}
@media screen and (max-width:600px){body{padding:5mm 4mm}.compact{columns:1}.pictured{display:block}header{flex-wrap:wrap}.incolumns{columns:1}.rows.three,.rows.three tbody,.rows.three tr,.rows.three th,.rows.three td,.rows.two,.rows.two tbody,.rows.two tr,.rows.two th,.rows.two td{display:block;width:auto!important;border:0;padding:0}.rows tr{border-bottom:1px solid var(--hair)!important;padding:.4em 0!important}.grid th:first-child{width:26%}.tick{width:7mm;height:7mm}.grid th,.grid td{padding:1px;overflow-wrap:anywhere}.about{text-align:left;margin-left:0}}
@media print{body{padding:0}details>summary{list-style:none}details:not(.screen)::details-content{content-visibility:visible;display:block;height:auto}}
)css";

constexpr const char* kClinician = R"css(
body{font-size:10pt;line-height:13.4pt}
h1{font-size:16pt;line-height:20pt}
.name p,.about{font-size:10pt;line-height:13.5pt}
h2{font-size:11.6pt;line-height:15pt;margin:12pt 0 2pt;border-left:4px solid var(--post);padding-left:9px}
h3,.box h2{font-size:11pt;line-height:15pt}
.statement{font-size:15.5pt;line-height:20pt}
.small,.note,.compact{font-size:9pt;line-height:12pt}
.rows.three th{width:20%}.rows.three td:last-child{width:30%}.rows.two th{width:24%}
.plain th,.plain td{font-size:9.8pt;line-height:13pt}
footer{font-size:9pt;line-height:12pt;margin-top:18pt;padding-top:4pt}
)css";

constexpr const char* kPhysician = R"css(
body{font-size:10.5pt;line-height:14.6pt}
h1{font-size:16pt;line-height:20pt}
h2{font-size:11.5pt;line-height:15.5pt;margin:9pt 0 2pt;border-left:4px solid var(--post);padding-left:9px}
h3,.box h2{font-size:10.5pt;line-height:14.5pt}
.statement{font-size:13pt;line-height:17.5pt}
.small,.note,.compact{font-size:9.5pt;line-height:13pt}
.rows.three th,.rows.two th{width:22%}.rows.three td:last-child{width:30%}
footer{font-size:9pt;line-height:12pt;margin-top:14pt;padding-top:4pt}
)css";

/// Sizes of client papers are shares of one size, which is 15, 18 or 24 pt.
constexpr const char* kClient = R"css(
body{font-size:var(--size);line-height:1.4}
h1{font-size:1.53em;line-height:1.17}
header{border-bottom-width:4px}
.name p,.about{font-size:var(--least);line-height:1.28}
h2{font-size:1.27em;line-height:1.26;margin:16pt 0 4pt}
h3,.box h2{font-size:1.17em;line-height:1.26}
.statement{font-size:1.2em;line-height:1.33}
.telephone{font-size:max(28pt,1.35em);line-height:1.2;font-weight:700}
.small,.note,.compact{font-size:var(--least);line-height:1.34}
section>.box+.box{margin-top:.8em}
.rows th{width:46%}
.grid{font-size:var(--least);line-height:1.1}
.tick{display:block;margin:0 auto}
.plain thead th,.plain td,.plain th{font-size:var(--least);line-height:1.34}
footer{font-size:var(--least);line-height:1.28;margin-top:20pt;padding-top:5pt}
)css";

/// No tints and no colours: for printers and eyes that want black on white only.
constexpr const char* kBlackOnly = R"css(
:root{--open:#000;--shut:#000;--post:#000;--ink:#000;--ink2:#000;--shutTint:#fff;--openTint:#fff}
.dose{border:1.5px solid #000}
)css";

/// Text in a CSS string.
std::string quoted(const std::string& text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\' || c == '<' || c == '\n') {
      constexpr char kHex[] = "0123456789abcdef";
      const auto byte = static_cast<unsigned char>(c);
      out += std::string("\\") + kHex[byte >> 4] + kHex[byte & 15] + " ";
    } else {
      out += c;
    }
  }
  return out + "\"";
}

}  // namespace

std::string paperStyle(const Document& document) {
  std::string css = ":root{";
  for (const auto& token : drawing::kTokens)
    css += "--" + std::string(token.name) + ":" + std::string(valueOf(token.colour, drawing::Theme::Paper)) +
           ";";
  const bool isClient = document.reader == Reader::Client;
  const char* least = document.textSize == TextSize::Points14   ? "14pt"
                      : document.textSize == TextSize::Points18 ? "18pt"
                                                                : "24pt";
  if (isClient)
    css += std::string("--least:") + least + ";--size:" +
           (document.textSize == TextSize::Points14 ? "15pt" : least) + ";";
  css += "}\n";
  const std::string font = "font-family:\"Clear Sans\",\"Noto Sans\",Arial,sans-serif;color:" +
                           std::string(valueOf(drawing::Colour::Ink2, drawing::Theme::Paper)) +
                           (isClient ? ";font-size:14pt" : ";font-size:9pt");
  const std::string who = document.title + (document.client.empty() ? "" : " · " + document.client);
  std::string pages = document.words.page;  // "page {page} of {pages}" as CSS
  std::string content;
  for (std::size_t at = 0; at < pages.size();) {
    if (pages.compare(at, 6, "{page}") == 0) {
      content += " counter(page) ";
      at += 6;
    } else if (pages.compare(at, 7, "{pages}") == 0) {
      content += " counter(pages) ";
      at += 7;
    } else {
      const std::size_t next = std::min(pages.find('{', at + 1), pages.size());
      content += quoted(pages.substr(at, next - at));
      at = next;
    }
  }
  css += std::string("@page{size:") + (document.paperSize == records::PaperSize::A4 ? "A4" : "letter") +
         ";margin:13mm 16mm 17mm 18mm;@bottom-left{content:" + quoted(who) + ";white-space:nowrap;" + font +
         "}@bottom-right{content:" + content + ";white-space:nowrap;" + font + "}}\n";
  css += kCommon;
  css += isClient ? kClient : document.reader == Reader::Physician ? kPhysician : kClinician;
  if (document.isOneExerciseAPage) css += ".exercise{break-before:page}\n";
  return document.isBlackOnly ? css + kBlackOnly : css;
}

}  // namespace stile::documents
