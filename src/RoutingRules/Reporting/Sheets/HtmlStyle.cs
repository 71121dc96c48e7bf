namespace RoutingRules.Reporting.Sheets;

/// <summary>The style of printed sheets: type and rules only, so that it reads in black and white, on A4 and on Letter.</summary>
internal static class HtmlStyle
{
    // No '<' and no '&' in here: the file must also parse as XML.
    public const string Css = """
        @page { margin: 11mm 11mm 14mm; @bottom-right { content: "page " counter(page) " of " counter(pages); font: 9pt sans-serif; } }
        * { box-sizing: border-box; }
        html { -webkit-text-size-adjust: 100%; }
        body { margin: 0; padding: 0; color: #000; background: #fff; font: 11.5pt/1.25 sans-serif; overflow-wrap: anywhere; }
        section { max-width: 200mm; margin: 0 auto; padding: 4mm; }
        section + section { break-before: page; border-top: 1px solid #000; }
        header { break-after: avoid; }
        h1, h2, h3, p, ul { margin: 0; padding: 0; }
        .show { font-size: 13pt; font-weight: bold; }
        .meta { font-size: 11.5pt; }
        h2 { font-size: 25pt; line-height: 1.15; margin-top: 2mm; }
        .aside { font-size: 13pt; font-weight: normal; margin-left: 1mm; }
        .view { font-size: 10.5pt; }
        table { width: 100%; border-collapse: collapse; table-layout: fixed; margin-top: 4mm; }
        thead { display: table-header-group; }
        tr { break-inside: avoid; }
        th, td { text-align: left; vertical-align: top; padding: 1.1mm 2.5mm 1.1mm 0; font-weight: normal; }
        tbody tr { border-bottom: 0.75pt solid #000; }
        thead .running td { font-size: 9.5pt; padding: 0; border: 0; }
        thead .name th { font-size: 15pt; font-weight: bold; padding: 0.6mm 0 0.3mm; }
        thead tr:last-child { border-bottom: 2pt solid #000; }
        thead tr:last-child th { font-size: 10pt; padding-bottom: 0.6mm; }
        .strong { font-weight: bold; font-size: 12.5pt; }
        .points tbody th .strong { font-size: 21pt; line-height: 1; font-variant-numeric: tabular-nums; }
        .points tbody th p + p { font-size: 9pt; margin-top: 0.5mm; }
        .mark { display: inline-block; margin-top: 0.4mm; padding: 0 1.2mm; border: 1.25pt solid #000; font-weight: bold; font-size: 11pt; }
        .dead { border-width: 2.5pt; border-style: double; padding: 0.4mm 1.6mm; }
        .box { display: inline-block; width: 5mm; height: 5mm; border: 1.25pt solid #000; vertical-align: -1mm; }
        .check { padding-left: 6.5mm; text-indent: -6.5mm; margin-bottom: 0.6mm; font-weight: bold; }
        .check .box { margin-right: 1mm; text-indent: 0; }
        .stop th { font-weight: bold; font-size: 14pt; padding-top: 3.5mm; }
        .stop { break-after: avoid; border-bottom: 2pt solid #000; }
        .free div { display: flex; gap: 3mm; }
        .slot { flex: 0 0 calc(25% - 2.25mm); min-width: 0; height: 8mm; border-bottom: 0.75pt dotted #000; }
        .slot b { font-size: 15pt; font-variant-numeric: tabular-nums; }
        .slot i { font-size: 9pt; }
        .cautions { break-inside: avoid; margin-top: 2mm; padding: 1mm 2.5mm 1.3mm; border: 2pt solid #000; }
        .cautions h3 { font-size: 10.5pt; }
        .cautions ul { columns: 2; column-gap: 5mm; font-size: 10pt; list-style: none; }
        .cautions li { break-inside: avoid; margin-top: 0.8mm; }
        .cautions li:first-child { column-span: all; font-size: 11.5pt; font-weight: bold; }
        @media print { section { max-width: none; padding: 0; } section + section { border-top: 0; } }

        """;
}
