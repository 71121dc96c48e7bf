using System.Text;
using System.Text.Json;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Reports;

public sealed class JsonReportTests
{
    private static string Write(params DocumentCheck[] documents)
    {
        using var output = new MemoryStream();
        using (var report = new JsonReport(output))
        {
            foreach (var document in documents)
            {
                report.Add(document);
            }

            report.Finish();
        }

        return Encoding.UTF8.GetString(output.ToArray());
    }

    [Fact]
    public void A_report_of_nothing_is_whole() =>
        Assert.Equal(
            """
            {
              "schemaVersion": 1,
              "documents": [],
              "summary": {
                "documents": 0,
                "errors": 0,
                "warnings": 0,
                "notes": 0,
                "waived": 0,
                "known": 0,
                "undecided": 0
              },
              "coverage": {
                "rules": [],
                "switchedOff": []
              }
            }

            """,
            Write()
        );

    [Fact]
    public void A_finding_carries_everything_a_program_needs()
    {
        var finding = ReportSamples.Finding("T1", Severity.Warning, "First <&> \"é\".", "Mend T1.", 41);
        var check = ReportSamples.Clean with { Path = "c.json", Result = ReportSamples.Clean.Result with { Findings = [finding] } };

        // The fingerprint is the first 16 hexadecimal digits of the SHA-256 of "T1", a line break and "output=box/out/5", computed with another program.
        Assert.Equal(
            """
            {
              "schemaVersion": 1,
              "documents": [
                {
                  "path": "c.json",
                  "status": "findings",
                  "findings": [
                    {
                      "rule": "T1",
                      "name": "t1",
                      "severity": "warning",
                      "message": "First <&> \"é\".",
                      "remedy": "Mend T1.",
                      "entities": [
                        {
                          "role": "output",
                          "id": "box/out/5"
                        }
                      ],
                      "pointer": "/patch/routes/3",
                      "line": 41,
                      "column": 9,
                      "fingerprint": "73756681c9cfcb8f",
                      "fixes": []
                    }
                  ],
                  "rules": {
                    "found": 0,
                    "passed": 2,
                    "notApplicable": 1,
                    "undecided": 0
                  }
                }
              ],
              "summary": {
                "documents": 1,
                "errors": 0,
                "warnings": 1,
                "notes": 0,
                "waived": 0,
                "known": 0,
                "undecided": 0
              },
              "coverage": {
                "rules": [
                  {
                    "rule": "T1",
                    "name": "t1",
                    "found": 0,
                    "passed": 1,
                    "notApplicable": 0,
                    "undecided": 0
                  },
                  {
                    "rule": "T2",
                    "name": "t2",
                    "found": 0,
                    "passed": 0,
                    "notApplicable": 1,
                    "undecided": 0
                  },
                  {
                    "rule": "T3",
                    "name": "t3",
                    "found": 0,
                    "passed": 1,
                    "notApplicable": 0,
                    "undecided": 0
                  }
                ],
                "switchedOff": []
              }
            }

            """,
            Write(check)
        );
    }

    [Fact]
    public void Totals_are_those_of_all_documents()
    {
        var root = JsonDocument.Parse(Write(ReportSamples.Mixed, ReportSamples.Clean, ReportSamples.Mixed)).RootElement;

        Assert.Equal(
            ["findings", "clean", "findings"],
            root.GetProperty("documents").EnumerateArray().Select(document => document.GetProperty("status").GetString())
        );
        Assert.Equal(
            """{"documents":3,"errors":4,"warnings":4,"notes":2,"waived":0,"known":0,"undecided":2}""",
            JsonSerializer.Serialize(root.GetProperty("summary"))
        );
        Assert.Equal("T3", root.GetProperty("documents")[0].GetProperty("rules").GetProperty("undecidedRules")[0].GetProperty("rule").GetString());
    }

    [Fact]
    public void Half_a_surrogate_pair_does_not_break_the_report()
    {
        var root = JsonDocument.Parse(Write(ReportSamples.Clean with { Path = "x\ud800.json" })).RootElement;

        Assert.Equal("x\ufffd.json", root.GetProperty("documents")[0].GetProperty("path").GetString());
    }

    [Fact]
    public void Waived_known_and_gone_findings_stand_apart_from_those_that_count()
    {
        var document = JsonDocument.Parse(Write(ReportSamples.Excused)).RootElement.GetProperty("documents")[0];

        Assert.Equal("findings", document.GetProperty("status").GetString());
        Assert.Equal("Third.", Assert.Single(document.GetProperty("findings").EnumerateArray()).GetProperty("message").GetString());
        var waived = Assert.Single(document.GetProperty("waived").EnumerateArray());
        Assert.Equal("First.", waived.GetProperty("message").GetString());
        Assert.Equal(
            """{"reason":"Rented amp, back on Monday","owner":"Mira","expires":"2027-06-14"}""",
            JsonSerializer.Serialize(waived.GetProperty("waiver"))
        );
        Assert.Equal("Second.", Assert.Single(document.GetProperty("known").EnumerateArray()).GetProperty("message").GetString());
        Assert.Equal("00000000000000aa", Assert.Single(document.GetProperty("gone").EnumerateArray()).GetProperty("fingerprint").GetString());
    }

    [Fact]
    public void A_rule_that_never_ran_is_named_as_switched_off()
    {
        using var output = new MemoryStream();
        using (var report = new JsonReport(output, ReportSamples.Options))
        {
            report.Add(ReportSamples.Clean);
            report.Finish();
        }

        var coverage = JsonDocument.Parse(output.ToArray()).RootElement.GetProperty("coverage");
        Assert.Equal(["T4", "T9"], coverage.GetProperty("switchedOff").EnumerateArray().Select(rule => rule.GetString()));
    }
}
