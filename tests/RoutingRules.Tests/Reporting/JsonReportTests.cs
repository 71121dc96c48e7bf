using System.Text;
using System.Text.Json;
using RoutingRules.Reporting;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Reporting;

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
    public void A_report_of_nothing_is_whole() => Assert.Equal(
        """
        {
          "schemaVersion": 1,
          "documents": [],
          "summary": {
            "documents": 0,
            "errors": 0,
            "warnings": 0,
            "notes": 0,
            "undecided": 0
          }
        }

        """,
        Write());

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
                "undecided": 0
              }
            }

            """,
            Write(check));
    }

    [Fact]
    public void Totals_are_those_of_all_documents()
    {
        var root = JsonDocument.Parse(Write(ReportSamples.Mixed, ReportSamples.Clean, ReportSamples.Mixed)).RootElement;

        Assert.Equal(["findings", "clean", "findings"], root.GetProperty("documents").EnumerateArray().Select(document => document.GetProperty("status").GetString()));
        Assert.Equal("""{"documents":3,"errors":4,"warnings":4,"notes":2,"undecided":2}""", JsonSerializer.Serialize(root.GetProperty("summary")));
        Assert.Equal("T3", root.GetProperty("documents")[0].GetProperty("rules").GetProperty("undecidedRules")[0].GetProperty("rule").GetString());
    }

    [Fact]
    public void Half_a_surrogate_pair_does_not_break_the_report()
    {
        var root = JsonDocument.Parse(Write(ReportSamples.Clean with { Path = "x\ud800.json" })).RootElement;

        Assert.Equal("x\ufffd.json", root.GetProperty("documents")[0].GetProperty("path").GetString());
    }
}
