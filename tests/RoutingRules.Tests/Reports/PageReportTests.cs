using System.Xml.Linq;

namespace RoutingRules.Tests.Reports;

/// <summary>The reports for people: Markdown and HTML.</summary>
public sealed class PageReportTests
{
    [Fact]
    public void Markdown_lists_findings_in_tables_the_worst_first()
    {
        var report = ReportSamples.Write("markdown", ReportSamples.Mixed);

        Assert.StartsWith(
            """
            # Check of the patch

            ## b.show.json

            2 errors, 2 warnings, 1 note.

            ### Errors

            | Line | Rule | What is wrong | What to do |
            |---|---|---|---|
            | 7:9 | T2 t2 | Third. | Mend this. |
            |  | T2 t2 | Fourth. | Mend that. |

            ### Warnings

            | Line | Rule | What is wrong | What to do |
            |---|---|---|---|
            | 41:9 | T1 t1 | First. | Mend T1. |
            | 52:9 | T1 t1 | Second. | Mend T1. |

            """,
            report,
            StringComparison.Ordinal
        );
        Assert.Contains("| T3 | feed mon | Its colour is not known. |\n", report, StringComparison.Ordinal);
        Assert.EndsWith("\nA clean report is a statement about the document, not about the room.\n", report, StringComparison.Ordinal);
    }

    [Fact]
    public void Markdown_shows_the_waiver_beside_its_finding() =>
        Assert.Contains(
            "| 41:9 | T1 t1 | First. | Rented amp, back on Monday | Mira | 2027-06-14 |\n",
            ReportSamples.Write("markdown", ReportSamples.Excused),
            StringComparison.Ordinal
        );

    [Fact]
    public void A_bar_in_a_message_does_not_end_its_cell()
    {
        var finding = ReportSamples.Finding("T1", RoutingRules.Rules.Severity.Error, "a|b", "", 1);
        var report = ReportSamples.Write("markdown", ReportSamples.Clean with { Result = ReportSamples.Clean.Result with { Findings = [finding] } });

        Assert.Contains("| 1:9 | T1 t1 | a\\|b |  |\n", report, StringComparison.Ordinal);
    }

    [Fact]
    public void Html_is_one_file_without_scripts_and_well_formed()
    {
        var report = ReportSamples.Write("html", ReportSamples.Mixed, ReportSamples.Excused, ReportSamples.Clean);
        var root = XDocument.Parse(report).Root!;

        Assert.Empty(root.Descendants("script"));
        Assert.DoesNotContain(
            root.DescendantsAndSelf().Attributes(),
            attribute => attribute.Name.LocalName is "src" or "href" || attribute.Name.LocalName.StartsWith("on", StringComparison.Ordinal)
        );
        Assert.DoesNotContain("http", report, StringComparison.Ordinal);
        Assert.Equal(["b.show.json", "c.show.json", "a.show.json", "What was looked at"], root.Descendants("h2").Select(heading => heading.Value));
        var rows = root.Descendants("tbody").First().Elements("tr").ToList();
        Assert.Equal(["7:9", "T2 t2", "Third.", "Mend this."], rows[0].Elements("td").Select(cell => cell.Value));
        Assert.Contains("A clean report is a statement about the document, not about the room.", root.Value, StringComparison.Ordinal);
    }
}
