using System.Xml.Linq;
using System.Xml.Schema;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Reports;

public sealed class JUnitReportTests
{
    /// <summary>
    /// Elements with their attributes, those that must be there with an exclamation mark, and their children, as
    /// <c>src/main/resources/org/jenkinsci/plugins/xunit/types/model/xsd/junit-10.xsd</c> of <c>jenkinsci/xunit-plugin</c> gives them.
    /// </summary>
    private static readonly Dictionary<string, (string[] Attributes, string[] Children)> Published = new()
    {
        ["testsuites"] = (["name", "time", "tests", "failures", "errors"], ["testsuite"]),
        ["testsuite"] = (
            ["name!", "tests!", "failures!", "errors!", "group", "time", "skipped", "timestamp", "hostname", "id", "package", "file", "log", "url"],
            ["testsuite", "properties", "testcase", "system-out", "system-err"]
        ),
        ["testcase"] = (
            ["name!", "time", "classname", "group"],
            ["skipped", "error", "failure", "rerunFailure", "rerunError", "flakyFailure", "flakyError", "system-out", "system-err"]
        ),
        ["failure"] = (["type", "message"], []),
        ["error"] = (["type", "message"], []),
        ["skipped"] = (["type", "message"], []),
        ["system-out"] = ([], []),
    };

    private static XElement Write(params DocumentCheck[] documents) => XDocument.Parse(ReportSamples.Write("junit", documents)).Root!;

    [Fact]
    public void Elements_and_attributes_are_those_of_the_published_schema()
    {
        var root = Write(ReportSamples.Mixed, ReportSamples.Clean, ReportSamples.Excused, ReportSamples.Unreadable);

        Assert.Equal("testsuites", root.Name.LocalName);
        foreach (var element in root.DescendantsAndSelf())
        {
            var (attributes, children) = Published[element.Name.LocalName];
            Assert.All(element.Attributes(), attribute => Assert.Contains(attribute.Name.LocalName, attributes.Select(name => name.TrimEnd('!'))));
            Assert.All(attributes.Where(name => name.EndsWith('!')), name => Assert.NotNull(element.Attribute(name.TrimEnd('!'))));
            Assert.All(element.Elements(), child => Assert.Contains(child.Name.LocalName, children));
        }
    }

    /// <summary>Source: the common JUnit XML shape, from memory; the schema beside this file is our own.</summary>
    [Fact]
    public void Reports_of_every_kind_are_valid_after_the_common_shape()
    {
        Assert.Empty(Problems(Write(ReportSamples.Mixed, ReportSamples.Clean, ReportSamples.Excused, ReportSamples.Unreadable)));
        Assert.Empty(Problems(Write()));
        Assert.Empty(Problems(XElement.Load(Path.Combine(AppContext.BaseDirectory, "Reports", "Expected", "quay.junit.xml"))));
    }

    [Theory]
    [InlineData("report", "<report/>")]
    [InlineData("tests", "<testsuites><testsuite name='a' failures='0' errors='0'/></testsuites>")]
    [InlineData("failures", "<testsuites><testsuite name='a' tests='0' failures='-1' errors='0'/></testsuites>")]
    [InlineData("classname", "<testsuites><testsuite name='a' tests='1' failures='0' errors='0'><testcase name='b'/></testsuite></testsuites>")]
    [InlineData(
        "failure",
        "<testsuites><testsuite name='a' tests='1' failures='1' errors='0'><testcase name='b' "
            + "classname='c'><system-out/><failure/></testcase></testsuite></testsuites>"
    )]
    [InlineData(
        "error",
        "<testsuites><testsuite name='a' tests='1' failures='1' errors='0'><testcase name='b' "
            + "classname='c'><failure/><error/></testcase></testsuite></testsuites>"
    )]
    [InlineData("colour", "<testsuites colour='red'/>")]
    public void What_is_not_of_the_common_shape_is_refused(string about, string xml)
    {
        Assert.Contains($"'{about}'", Assert.Single(Problems(XElement.Parse(xml))), StringComparison.Ordinal);
    }

    [Fact]
    public void The_numbers_of_a_suite_are_those_of_its_cases()
    {
        foreach (var suite in Write(ReportSamples.Mixed, ReportSamples.Clean, ReportSamples.Excused, ReportSamples.Unreadable).Elements("testsuite"))
        {
            Assert.Equal(suite.Elements("testcase").Count(), (int)suite.Attribute("tests")!);
            Assert.Equal(suite.Elements("testcase").Elements("failure").Count(), (int)suite.Attribute("failures")!);
            Assert.Equal(suite.Elements("testcase").Elements("error").Count(), (int)suite.Attribute("errors")!);
            Assert.Equal(suite.Elements("testcase").Elements("skipped").Count(), (int?)suite.Attribute("skipped") ?? 0);
        }
    }

    private static List<string> Problems(XElement report)
    {
        var schemas = new XmlSchemaSet();
        schemas.Add(null, Path.Combine(AppContext.BaseDirectory, "Reports", "junit-common.xsd"));
        var problems = new List<string>();
        new XDocument(report).Validate(schemas, (_, problem) => problems.Add(problem.Message));
        return problems;
    }

    [Fact]
    public void Each_rule_is_a_case_and_each_document_a_suite_with_its_numbers()
    {
        var suite = Write(ReportSamples.Mixed).Element("testsuite")!;

        // T1 has warnings, T2 errors, T3 could not decide, T4 passed.
        Assert.Equal(["T1 t1", "T2 t2", "T3 t3", "T4 t4"], suite.Elements("testcase").Select(test => test.Attribute("name")!.Value));
        Assert.Equal(
            ("b.show.json", "4", "2", "1", "0"),
            (
                suite.Attribute("name")!.Value,
                suite.Attribute("tests")!.Value,
                suite.Attribute("failures")!.Value,
                suite.Attribute("errors")!.Value,
                suite.Attribute("skipped")!.Value
            )
        );
        var failure = suite.Elements("testcase").First().Element("failure")!;
        Assert.Equal("2 findings: Title of T1", failure.Attribute("message")!.Value);
        Assert.Equal("b.show.json:41:9: First.\nb.show.json:52:9: Second.\nWhat to do: Mend T1.", failure.Value);
        Assert.Equal("Not decided: feed mon: Its colour is not known.", suite.Elements("testcase").ElementAt(2).Element("error")!.Attribute("message")!.Value);
        Assert.Empty(suite.Elements("testcase").Last().Elements());
    }

    [Fact]
    public void What_is_below_the_threshold_does_not_fail_and_is_still_told()
    {
        using var output = new MemoryStream();
        using (var report = ReportFormats.Find("junit")!.Create(output, ReportSamples.Options with { FailOn = Severity.Error }))
        {
            report.Add(ReportSamples.Mixed);
            report.Finish();
        }

        var test = XDocument.Parse(System.Text.Encoding.UTF8.GetString(output.ToArray())).Root!.Element("testsuite")!.Elements("testcase").First();
        Assert.Null(test.Element("failure"));
        Assert.Equal("warning: b.show.json:41:9: First.\nwarning: b.show.json:52:9: Second.", test.Element("system-out")!.Value);
    }

    [Fact]
    public void A_rule_without_subjects_and_one_that_never_ran_are_skipped_for_different_reasons()
    {
        var root = Write(ReportSamples.Clean, ReportSamples.Unreadable);

        Assert.Equal(
            "nothing to look at",
            root.Elements("testsuite").First().Elements("testcase").ElementAt(1).Element("skipped")!.Attribute("message")!.Value
        );
        Assert.Equal(
            "not run, because the document could not be read in full",
            root.Elements("testsuite").ElementAt(1).Elements("testcase").ElementAt(1).Element("skipped")!.Attribute("message")!.Value
        );
    }

    [Fact]
    public void Waived_and_known_findings_do_not_fail()
    {
        var test = Write(ReportSamples.Excused).Element("testsuite")!.Elements("testcase").First();

        Assert.Null(test.Element("failure"));
        Assert.Equal(
            "waived by Mira until 2027-06-14 (Rented amp, back on Monday): c.show.json:41:9: First.\nknown: c.show.json:52:9: Second.",
            test.Element("system-out")!.Value
        );
    }
}
