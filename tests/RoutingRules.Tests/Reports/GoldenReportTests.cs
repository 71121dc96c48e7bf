using System.Text;
using RoutingRules.Documents;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Profiles.Generic;
using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Tests.Reports;

/// <summary>Whole reports, byte for byte, as their readers get them. Read every line of a difference before it is kept.</summary>
public sealed class GoldenReportTests
{
    /// <summary>When set, the expected files are written anew and the tests fail, so that nobody forgets to read the difference.</summary>
    private const string Rewrite = "ROUTINGRULES_REWRITE_EXPECTED";

    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    /// <summary>The rules that the small show is about; a catalogue of all would make every new rule a change of the kept SARIF.</summary>
    private static readonly string[] Told = ["RR2009", "RR5005", "RR5009", "RR6001", "RR6003", "RR7003", "RR9001"];

    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Reports", "Expected");

    [Theory]
    [InlineData("text", "quay.txt")]
    [InlineData("json", "quay.json")]
    [InlineData("sarif", "quay.sarif")]
    [InlineData("junit", "quay.junit.xml")]
    [InlineData("github", "quay.github.txt")]
    [InlineData("markdown", "quay.md")]
    [InlineData("html", "quay.html")]
    public void A_small_show_with_one_waived_one_known_and_one_undecided_is_reported_as_kept(string format, string expected) =>
        Compare(expected, Write(format, Quay()));

    [Theory]
    [InlineData("text", "mistakes.txt")]
    [InlineData("json", "mistakes.json")]
    public void The_festival_with_mistakes_is_reported_as_kept(string format, string expected) =>
        Compare(expected, Write(format, Check("05-festival-mistakes.show.json", Path.Combine(AppContext.BaseDirectory, "examples"))));

    [Theory]
    [InlineData("text", "cut-off.txt")]
    [InlineData("markdown", "cut-off.md")]
    public void A_document_that_breaks_off_is_reported_as_kept(string format, string expected) =>
        Compare(expected, Write(format, Check("cut-off.show.json", Folder)));

    [Fact]
    public void The_small_show_holds_every_way_a_finding_can_be_told()
    {
        var quay = Quay();

        Assert.Equal(
            ["RR5009 Warning", "RR6003 Error", "RR7003 Note", "RR9001 Error"],
            quay.Result.Findings.Select(finding => $"{finding.Rule} {finding.Severity}").Distinct()
        );
        Assert.Equal(["RR2009"], quay.Waived.Select(waived => waived.Finding.Rule));
        Assert.Equal(["RR6001"], quay.Known.Select(finding => finding.Rule));
        Assert.Equal(["RR5005"], quay.Result.Undecided.Select(subject => subject.Rule));
    }

    /// <summary>The small show under a waiver for its stray output and a baseline that knows the guitar.</summary>
    private static DocumentCheck Quay()
    {
        const string Name = "quay.show.json";
        var waivers = WaiverReader.Read(File.ReadAllBytes(Path.Combine(Folder, "quay.waivers.json"))).Value!;
        var baseline = BaselineReader.Read(File.ReadAllBytes(Path.Combine(Folder, "quay.baseline.json"))).Value!;
        var waived = new WaiverBook(waivers, Engine.Catalogue, new DateOnly(2027, 7, 3)).Apply(Check(Name, Folder), Name);
        return new BaselineBook(baseline).Apply(waived, Name);
    }

    private static DocumentCheck Check(string name, string folder)
    {
        var text = File.ReadAllBytes(Path.Combine(folder, name));
        return DocumentCheck.Run(Engine, name, text).WithCauses(Engine, text);
    }

    private static string Write(string format, DocumentCheck document)
    {
        using var output = new MemoryStream();
        using (
            var report = ReportFormats
                .Find(format)!
                .Create(output, new ReportOptions { Rules = Engine.Catalogue.Where(rule => Told.Contains(rule.Id)).ToValueList() })
        )
        {
            report.Add(document);
            report.Finish();
        }

        var version = typeof(RoutingEngine).Assembly.GetName().Version!.ToString(3);
        return Encoding
            .UTF8.GetString(output.ToArray())
            .Replace($"\"semanticVersion\": \"{version}\"", "\"semanticVersion\": \"VERSION\"", StringComparison.Ordinal);
    }

    private static void Compare(string name, string text)
    {
        if (Environment.GetEnvironmentVariable(Rewrite) is { Length: > 0 })
        {
            File.WriteAllText(Repository.At("tests", "RoutingRules.Tests", "Reports", "Expected", name), text);
            Assert.Fail($"{name} was written anew: read the difference, then build and test without {Rewrite}.");
        }

        Assert.Equal(File.ReadAllText(Path.Combine(Folder, name)), text);
    }
}
