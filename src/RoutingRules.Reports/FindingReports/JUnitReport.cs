using System.Globalization;
using System.Text;
using System.Xml;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes checks as JUnit XML: a suite for each document, a case for each rule.</summary>
/// <remarks>
/// Findings at or above the threshold fail the case, milder, waived and known ones stand in its output; a rule that could not decide is an error, one
/// without anything to look at is skipped, and so are all when the document could not be read. No times: the same documents give the same bytes.
/// </remarks>
internal sealed class JUnitReport : ReportWriter
{
    private readonly XmlWriter xml;
    private readonly Severity failOn;
    private readonly Coverage coverage;

    public JUnitReport(Stream output, ReportOptions options)
    {
        failOn = options.FailOn;
        coverage = new Coverage(options.Rules);
        xml = XmlWriter.Create(
            output,
            new XmlWriterSettings
            {
                Encoding = new UTF8Encoding(false),
                Indent = true,
                NewLineChars = "\n",
                NewLineHandling = NewLineHandling.Replace,
                CloseOutput = false,
            }
        );
        xml.WriteStartElement("testsuites");
        xml.WriteAttributeString("name", "RoutingRules");
    }

    public override void Add(DocumentCheck document)
    {
        ArgumentNullException.ThrowIfNull(document);
        coverage.Add(document.Result);
        var cases = document.Result.Rules.Select(outcome => new JUnitCase(document, outcome, failOn)).ToList();
        xml.WriteStartElement("testsuite");
        xml.WriteAttributeString("name", Text(document.Path));
        Count("tests", cases.Count);
        Count("failures", cases.Count(test => test.Result == JUnitResult.Failure));
        Count("errors", cases.Count(test => test.Result == JUnitResult.Error));
        Count("skipped", cases.Count(test => test.Result == JUnitResult.Skipped));
        foreach (var test in cases)
        {
            Write(document.Path, test);
        }

        if (ToldCause.Of(document) is { Count: > 0 } causes)
        {
            xml.WriteElementString("system-out", Text(string.Join('\n', CauseText.Lines(causes, document, Severity.Note)).TrimStart()));
        }

        xml.WriteEndElement();
        xml.Flush();
    }

    public override void Finish()
    {
        if (coverage.Rules.Count > 0)
        {
            xml.WriteStartElement("testsuite");
            xml.WriteAttributeString("name", "What was looked at");
            Count("tests", 0);
            Count("failures", 0);
            Count("errors", 0);
            xml.WriteElementString("system-out", Text(string.Join('\n', coverage.Sentences())));
            xml.WriteEndElement();
        }

        xml.WriteEndElement();
        xml.WriteRaw("\n");
        xml.Flush();
    }

    protected override void Dispose(bool disposing)
    {
        xml.Dispose();
        base.Dispose(disposing);
    }

    private void Write(string path, JUnitCase test)
    {
        xml.WriteStartElement("testcase");
        xml.WriteAttributeString("classname", Text(path));
        xml.WriteAttributeString("name", Text($"{test.Rule.Id} {test.Rule.Name}"));
        if (test.Result != JUnitResult.Passed)
        {
            xml.WriteStartElement(
                test.Result switch
                {
                    JUnitResult.Failure => "failure",
                    JUnitResult.Error => "error",
                    _ => "skipped",
                }
            );
            xml.WriteAttributeString("type", test.Rule.Name);
            xml.WriteAttributeString("message", Text(test.Message));
            xml.WriteString(Text(string.Join('\n', test.Details)));
            xml.WriteEndElement();
        }

        if (test.Output.Count > 0)
        {
            xml.WriteElementString("system-out", Text(string.Join('\n', test.Output)));
        }

        xml.WriteEndElement();
    }

    private void Count(string name, int number) => xml.WriteAttributeString(name, number.ToString(CultureInfo.InvariantCulture));

    private static string Text(string text) => string.Join('\n', text.Split('\n').Select(VisibleText.Of));
}
