using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Reports;

public sealed class TextReportTests
{
    private static string Write(Severity lowest, params DocumentCheck[] documents)
    {
        using var output = new StringWriter { NewLine = "\n" };
        var report = new TextReport(output, lowest);
        foreach (var document in documents)
        {
            report.Add(document);
        }

        report.Finish();
        return output.ToString();
    }

    [Fact]
    public void A_clean_document_takes_one_line_and_the_end_says_what_was_looked_at() =>
        Assert.Equal(
            """
            a.show.json: clean. 2 rules passed, 1 had nothing to look at, 0 undecided.

            3 rules looked: 0 found something, 2 passed, 1 had nothing to look at, 0 could not decide everywhere.
            Nothing to look at: T2 t2.

            """,
            Write(Severity.Note, ReportSamples.Clean)
        );

    [Fact]
    public void Findings_are_grouped_by_severity_and_rule_with_each_remedy_once() =>
        Assert.Equal(
            """
            b.show.json: 2 errors, 2 warnings, 1 note

            Errors

              T2 t2: Title of T2
                b.show.json:7:9: Third.
                What to do: Mend this.
                b.show.json: Fourth.
                What to do: Mend that.

            Warnings

              T1 t1: Title of T1
                b.show.json:41:9: First.
                b.show.json:52:9: Second.
                What to do: Mend T1.

            Notes

              T2 t2: Title of T2
                b.show.json:8:9: Fifth.

            Not decided

              T3, feed mon: Its colour is not known.

              2 errors, 2 warnings, 1 note. 1 rule passed, 0 had nothing to look at, 1 undecided.

            4 rules looked: 2 found something, 1 passed, 0 had nothing to look at, 1 could not decide everywhere.
            Not decided everywhere: T3 t3.

            """,
            Write(Severity.Note, ReportSamples.Mixed)
        );

    [Fact]
    public void What_is_below_the_lowest_severity_is_counted_but_not_listed()
    {
        var text = Write(Severity.Error, ReportSamples.Clean, ReportSamples.Mixed);

        Assert.StartsWith("b.show.json: 2 errors, 2 warnings, 1 note (3 not listed)\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("First.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("a.show.json", text, StringComparison.Ordinal);
        Assert.EndsWith("2 documents: 1 clean, 1 with something to look at, 0 unreadable; 2 errors, 2 warnings, 1 note.\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_document_with_nothing_but_undecided_rules_is_not_called_clean()
    {
        var undecided = ReportSamples.Mixed with { Result = ReportSamples.Mixed.Result with { Findings = default } };
        var text = Write(Severity.Error, undecided);

        Assert.Equal(DocumentStatus.Undecided, undecided.Status);
        Assert.Contains("not everything could be decided", text, StringComparison.Ordinal);
        Assert.Contains("T3, feed mon: Its colour is not known.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_culture_of_the_machine_changes_nothing()
    {
        var before = Thread.CurrentThread.CurrentCulture;
        var usual = Write(Severity.Note, ReportSamples.Clean, ReportSamples.Mixed);
        try
        {
            Thread.CurrentThread.CurrentCulture = (System.Globalization.CultureInfo)before.Clone();
            Thread.CurrentThread.CurrentCulture.NumberFormat.NegativeSign = "minus";
            Thread.CurrentThread.CurrentCulture.NumberFormat.NumberDecimalSeparator = ";";
            Assert.Equal(usual, Write(Severity.Note, ReportSamples.Clean, ReportSamples.Mixed));
        }
        finally
        {
            Thread.CurrentThread.CurrentCulture = before;
        }
    }

    [Fact]
    public void Waived_findings_are_listed_with_reason_owner_and_last_day_and_known_ones_are_counted()
    {
        var text = Write(Severity.Note, ReportSamples.Excused);

        Assert.StartsWith("c.show.json: 1 error, 0 warnings, 0 notes; 1 waived; 1 known\n", text, StringComparison.Ordinal);
        Assert.Contains(
            """

            Waived

              T1 t1: Title of T1
                c.show.json:41:9: First.
                Waived by Mira until 2027-06-14: Rented amp, back on Monday

            Baseline: 1 known finding not counted, 1 no longer found.

            """,
            text,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("Second.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_document_with_nothing_but_waived_findings_is_clean_and_still_lists_them()
    {
        var document = ReportSamples.Excused with { Result = ReportSamples.Clean.Result, Known = default, Gone = default };
        var text = Write(Severity.Note, document);

        Assert.Equal(DocumentStatus.Clean, document.Status);
        Assert.StartsWith("c.show.json: clean; 1 waived\n", text, StringComparison.Ordinal);
        Assert.Contains("Waived by Mira until 2027-06-14: Rented amp, back on Monday\n", text, StringComparison.Ordinal);
    }
}
