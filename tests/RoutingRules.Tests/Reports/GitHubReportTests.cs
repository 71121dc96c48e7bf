namespace RoutingRules.Tests.Reports;

/// <summary>
/// Form: GitHub documentation, "Workflow commands for GitHub Actions" (from memory). Escaping: <c>escapeData</c> and <c>escapeProperty</c> in
/// <c>packages/core/src/command.ts</c> of <c>actions/toolkit</c>: in texts %, carriage return and line feed, in properties also colon and comma.
/// </summary>
public sealed class GitHubReportTests
{
    [Fact]
    public void Each_finding_is_one_command_with_its_place()
    {
        var lines = ReportSamples.Write("github", ReportSamples.Mixed).Split('\n');

        Assert.Equal("::warning file=b.show.json,line=41,col=9,title=T1 t1::First.%0AMend T1.", lines[2]);
        Assert.Equal("::error file=b.show.json,line=7,col=9,title=T2 t2::Third.%0AMend this.", lines[0]);
        Assert.Equal("::error file=b.show.json,title=T2 t2::Fourth.%0AMend that.", lines[1]);
        Assert.Equal("::notice file=b.show.json,line=8,col=9,title=T2 t2::Fifth.%0AMend that.", lines[4]);
        Assert.Equal("::warning file=b.show.json,title=Not decided::T3, feed mon: Its colour is not known.", lines[5]);
        Assert.StartsWith(
            "::notice title=What was looked at::2 errors, 2 warnings, 1 note, 0 waived, 0 known.%0A4 rules looked:",
            lines[6],
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Colons_and_commas_are_escaped_in_properties_and_percent_signs_and_breaks_everywhere()
    {
        var finding = ReportSamples.Finding("T1", RoutingRules.Rules.Severity.Error, "100 %: a, b\nc", "", 1);
        var document = ReportSamples.Clean with { Path = "50%,x:y.json", Result = ReportSamples.Clean.Result with { Findings = [finding] } };

        Assert.StartsWith(
            "::error file=50%25%2Cx%3Ay.json,line=1,col=9,title=T1 t1::100 %25: a, b%0Ac\n",
            ReportSamples.Write("github", document),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void A_waived_finding_is_a_notice_and_a_known_one_is_only_counted()
    {
        var report = ReportSamples.Write("github", ReportSamples.Excused);

        Assert.Contains(
            "::notice file=c.show.json,line=41,col=9,title=Waived%3A T1 t1::First.%0AWaived by Mira until 2027-06-14: Rented amp, back on Monday\n",
            report,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("Second.", report, StringComparison.Ordinal);
        Assert.Contains("1 known.", report, StringComparison.Ordinal);
    }
}
