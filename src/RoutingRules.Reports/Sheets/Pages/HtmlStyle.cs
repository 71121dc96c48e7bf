namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>The style of printed sheets: type and rules only, so that it reads in black and white, on A4 and on Letter.</summary>
internal static class HtmlStyle
{
    // No '<' and no '&' in here: the file must also parse as XML.
    public const string Css =
        """
            @page { margin: 10mm 11mm 12mm; @bottom-right { content: "page " counter(page) " of " counter(pages); font: 9pt sans-serif; } }
            * { box-sizing: border-box; }
            html { -webkit-text-size-adjust: 100%; }
            body { margin: 0; padding: 0; color: #000; background: #fff; font: 11.5pt/1.25 sans-serif; overflow-wrap: anywhere; }
            section { max-width: 196mm; margin: 0 auto; padding: 4mm; }
            section + section { break-before: page; border-top: 1px solid #000; }
            section + section.short { break-before: auto; break-inside: avoid; margin-top: 4mm; border-top: 0; }
            section + section.on { break-inside: auto; }
            .on > .page > tbody > tr > td > p, .on aside { break-after: avoid; break-inside: avoid; }
            .on > .page > thead { break-after: avoid; }
            .on .cautions { border: 0; padding: 0; margin-top: 0.5mm; }
            .short header { border-bottom-width: 1.5pt; }
            .short .show, .short .meta { font-size: 9pt; }
            .short h2 { font-size: 18pt; }
            .short .code b { font-size: 16pt; }
            .page { margin: 0; }
            .page > tbody > tr, .page > thead > tr { border: 0; break-inside: auto; }
            .page > tbody > tr > td, .page > thead > tr > td { padding: 0; }
            header { display: flex; justify-content: space-between; gap: 4mm; border-bottom: 2.5pt solid #000; padding-bottom: 1mm;
            """
        + """
             margin-bottom: 2mm; break-inside: avoid; }
            header div { min-width: 0; }
            h1, h2, h3, p, ul { margin: 0; padding: 0; }
            .show, .meta { display: inline; font-size: 10pt; }
            .show { font-weight: bold; margin-right: 2mm; }
            h2 { font-size: 21pt; line-height: 1.05; }
            .aside { font-size: 13pt; font-weight: normal; margin-left: 1mm; }
            .code { flex: none; text-align: right; line-height: 1; }
            .code span { display: block; font-size: 9pt; }
            .code b { display: block; font-size: 22pt; letter-spacing: 0.06em; font-variant-numeric: tabular-nums; }
            .view { font-size: 10.5pt; }
            figure { margin: 3mm 0 0; break-inside: avoid; }
            figcaption { font-size: 15pt; font-weight: bold; margin-bottom: 1mm; }
            figcaption small { display: block; font-size: 9pt; font-weight: normal; }
            svg { display: block; width: 100%; max-height: 205mm; }
            figure + figure svg { max-height: 84mm; }
            .cautions + figure svg { max-height: 104mm; }
            .bar { display: inline-block; width: 26mm; height: 5mm; vertical-align: -1mm; }
            table { width: 100%; border-collapse: collapse; table-layout: fixed; margin-top: 4mm; }
            thead { display: table-header-group; }
            tr { break-inside: avoid; }
            th, td { text-align: left; vertical-align: top; padding: 1.1mm 2.5mm 1.1mm 0; font-weight: normal; }
            tbody tr { border-bottom: 0.75pt solid #000; }
            thead .name th { font-size: 15pt; font-weight: bold; padding: 0.6mm 0 0.3mm; }
            table:not(.page) > thead tr:last-child { border-bottom: 2pt solid #000; }
            table:not(.page) > thead tr:last-child th { font-size: 10pt; padding-bottom: 0.6mm; }
            .flow2, .flow3 { columns: 2; column-gap: 6mm; column-rule: 0.5pt solid #000; margin-top: 3mm; }
            .flow3 { columns: 3; }
            .flow2 > table, .flow3 > table { margin-top: 0; margin-bottom: 3mm; }
            .dense th, .dense td { padding: 0.4mm 1.2mm 0.4mm 0; line-height: 1.18; }
            .dense > tbody > tr > :last-child { padding-right: 0; }
            .few { break-inside: avoid; }
            .dense > thead { break-after: avoid; break-inside: avoid; }
            .dense > tbody > tr:first-child { break-before: avoid; }
            .titled > thead > tr:last-child { display: none; }
            .few { break-inside: avoid; }
            .dense > thead { break-after: avoid; break-inside: avoid; }
            .dense > tbody > tr:first-child { break-before: avoid; }
            .titled > thead > tr.name { border-bottom: 1.5pt solid #000; }
            .dense > thead .name th { font-size: 13pt; }
            .dense .check { padding-left: 6mm; text-indent: -6mm; margin: 0; }
            .tick .check { white-space: nowrap; }
            .large .tick .check { white-space: normal; }
            .dense .mark, .dense .change { margin-top: 0; line-height: 1.1; }
            small { font-size: 9.5pt; }
            .strong { font-weight: bold; font-size: 12.5pt; }
            .points tbody th .strong { font-size: 21pt; line-height: 1; font-variant-numeric: tabular-nums; }
            .points tbody th p + p { font-size: 9pt; margin-top: 0.5mm; }
            .mark { display: inline-block; margin-top: 0.4mm; padding: 0 1.2mm; border: 1.25pt solid #000; font-weight: bold; font-size: 11pt; }
            .dead { border-width: 2.5pt; border-style: double; padding: 0.4mm 1.6mm; }
            .change { display: inline-block; margin-top: 0.4mm; padding: 0 1.2mm; border: 1.25pt dashed #000; font-weight: bold; font-size: 11pt; }
            .changed > :first-child { border-left: 3mm solid #000; padding-left: 1.5mm; }
            .run { white-space: nowrap; }
            .blank { break-before: avoid; }
            .blank td { height: 11mm; border-right: 0.5pt dotted #000; }
            .box { display: inline-block; width: 5mm; height: 5mm; border: 1.25pt solid #000; vertical-align: -1mm; }
            .check { padding-left: 6.5mm; text-indent: -6.5mm; margin-bottom: 0.6mm; font-weight: bold; }
            .check .box { margin-right: 1mm; text-indent: 0; }
            .dense .blank td { height: 9mm; }
            .dense .stop th { font-size: 12.5pt; padding-top: 2mm; }
            .stop th { font-weight: bold; font-size: 14pt; padding-top: 3.5mm; }
            .stop { break-after: avoid; border-bottom: 2pt solid #000; }
            .cautions { break-inside: avoid; margin-top: 2mm; padding: 1mm 2.5mm 1.3mm; border: 2pt solid #000; }
            .cautions p { font-size: 9.5pt; font-weight: bold; }
            .cautions h3 { font-size: 10.5pt; }
            .cautions ul { columns: 2; column-gap: 5mm; font-size: 10pt; list-style: none; }
            .cautions li { break-inside: avoid; margin-top: 0.8mm; }
            .cautions li:first-child { column-span: all; font-size: 11.5pt; font-weight: bold; }
            .large { font-size: 14pt; overflow-wrap: break-word; }
            .large .flow2, .large .flow3 { columns: 1; }
            .large small { font-size: 12pt; }
            .large .strong { font-size: 16pt; }
            .large .meta, .large .view, .large .mark, .large .change { font-size: 13pt; }
            .large .points tbody th .strong { font-size: 24pt; }
            .large .cautions ul { font-size: 12pt; }
            .large .cautions p { font-size: 12pt; }
            .large .cautions li:first-child { font-size: 14pt; }
            .large thead tr:last-child th { font-size: 12.5pt; }
            .large figcaption small, .large .points tbody th p + p, .large .code span { font-size: 11.5pt; }
            .large .cautions + figure svg { max-height: 116mm; }
            .large .box { width: 6.5mm; height: 6.5mm; }
            @media print { section { max-width: none; padding: 0; } section + section { border-top: 0; } }

            """;
}
