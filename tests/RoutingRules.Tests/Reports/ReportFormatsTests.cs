using System.Text;
using System.Xml.Linq;
using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Tests.Reports;

/// <summary>What every format of reports has to do, whatever it looks like.</summary>
public sealed class ReportFormatsTests
{
    public static TheoryData<string> Formats => [.. ReportFormats.All.Select(format => format.Name)];

    [Fact]
    public void There_are_seven_formats_and_no_other_name_is_known()
    {
        Assert.Equal(["text", "json", "sarif", "junit", "github", "markdown", "html"], ReportFormats.All.Select(format => format.Name));
        Assert.Null(ReportFormats.Find("pdf"));
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void A_waived_finding_is_listed_with_its_reason_and_owner(string format)
    {
        var report = ReportSamples.Write(format, ReportSamples.Excused);

        Assert.Contains("First.", report, StringComparison.Ordinal);
        Assert.Contains("Rented amp, back on Monday", report, StringComparison.Ordinal);
        Assert.Contains("Mira", report, StringComparison.Ordinal);
        Assert.Contains("2027-06-14", report.Replace("\\", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void What_could_not_be_decided_is_there_with_its_reason(string format)
    {
        var report = ReportSamples.Write(format, ReportSamples.Mixed);

        Assert.Contains("feed mon", report, StringComparison.Ordinal);
        Assert.Contains("Its colour is not known.", report, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void A_report_ends_with_what_was_looked_at_and_what_was_switched_off(string format)
    {
        var report = ReportSamples.Write(format, ReportSamples.Mixed, ReportSamples.Clean, ReportSamples.Unreadable);
        var after = report[report.LastIndexOf("Cut off.", StringComparison.Ordinal)..];

        Assert.Contains("T9", after, StringComparison.Ordinal);
        Assert.Contains("T3", after, StringComparison.Ordinal);
        Assert.DoesNotContain("T9", report[..^after.Length].Replace(ToolRules(report), "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void The_same_documents_give_the_same_bytes_with_line_feeds_and_no_mark(string format)
    {
        var report = ReportSamples.Write(format, ReportSamples.Mixed, ReportSamples.Excused, ReportSamples.Unreadable);

        Assert.Equal(report, ReportSamples.Write(format, ReportSamples.Mixed, ReportSamples.Excused, ReportSamples.Unreadable));
        Assert.DoesNotContain('\r', report);
        Assert.DoesNotContain('\ufeff', report);
        Assert.Equal('\n', report[^1]);
        Assert.NotEqual("\n\n", report[^2..]);
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void A_report_of_nothing_is_whole(string format) => Assert.NotNull(ReportSamples.Write(format));

    [Theory]
    [MemberData(nameof(Formats))]
    public void Texts_that_would_steer_a_terminal_or_break_the_form_are_made_harmless(string format)
    {
        const string Nasty = "<b>&\"|`*\u001b[2J\u202e]]>\ud800 %0A::error::x\nsecond line";
        var finding = ReportSamples.Finding("T1", RoutingRules.Rules.Severity.Error, Nasty, Nasty, 5);
        var document = ReportSamples.Clean with { Path = "a,b:c <d>.show.json", Result = ReportSamples.Clean.Result with { Findings = [finding] } };
        var report = ReportSamples.Write(format, document);

        Assert.DoesNotContain('\u001b', report);
        Assert.DoesNotContain('\ud800', report);
        Assert.DoesNotContain("\n::error::x", report, StringComparison.Ordinal);
        if (format is "junit" or "html")
        {
            XDocument.Parse(report);
        }
        else if (format is "json" or "sarif")
        {
            System.Text.Json.JsonDocument.Parse(report).Dispose();
        }
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void The_stream_stays_open(string format)
    {
        using var output = new MemoryStream();
        using (var report = ReportFormats.Find(format)!.Create(output, new ReportOptions()))
        {
            report.Add(ReportSamples.Clean);
            report.Finish();
        }

        output.Write("after"u8);
        Assert.EndsWith("after", Encoding.UTF8.GetString(output.ToArray()), StringComparison.Ordinal);
    }

    /// <summary>The list of rules that SARIF begins with.</summary>
    private static string ToolRules(string report)
    {
        var begin = report.IndexOf("\"tool\"", StringComparison.Ordinal);
        return begin < 0 ? "\0" : report[begin..report.IndexOf("\"columnKind\"", StringComparison.Ordinal)];
    }
}
