using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Tests.Reports;
using RoutingRules.Waivers;

namespace RoutingRules.Tests.Engine.DocumentRuns;

public sealed class BaselineBookTests
{
    private static Finding At(string rule, int number, string message = "M") =>
        ReportSamples.Finding(rule, Severity.Error, message, "") with
        {
            Entities = [Entity.Of("output", $"box/out/{number}")],
        };

    private static DocumentCheck Check(params Finding[] findings) =>
        ReportSamples.Mixed with
        {
            Result = ReportSamples.Mixed.Result with { Findings = findings.ToValueList() },
        };

    private static BaselineFinding Identity(Finding finding) =>
        new()
        {
            Rule = finding.Rule,
            Fingerprint = finding.Fingerprint(),
            Entities = finding.Entities,
        };

    private static Baseline Of(string path, params Finding[] findings) =>
        new()
        {
            Documents =
            [
                new BaselineDocument
                {
                    Path = path,
                    Findings = findings.Select(Identity).OrderBy(finding => finding.Rule + finding.Fingerprint, StringComparer.Ordinal).ToValueList(),
                },
            ],
        };

    [Fact]
    public void Known_findings_do_not_count_and_gone_ones_are_named()
    {
        var book = new BaselineBook(Of("b", At("T1", 1), At("T1", 2)));
        var check = book.Apply(Check(At("T1", 1, "Other words, same thing."), At("T1", 3)), "b");

        Assert.Equal(["box/out/3"], check.Result.Findings.Select(finding => finding.Entities[0].Id));
        Assert.Equal(["box/out/1"], check.Known.Select(finding => finding.Entities[0].Id));
        Assert.Equal(["box/out/2"], check.Gone.Select(gone => gone.Entities[0].Id));
        Assert.True(check.IsCompared);
    }

    [Fact]
    public void One_finding_is_judged_by_rule_identity_and_document()
    {
        var book = new BaselineBook(Of("b", At("T1", 1)));

        Assert.True(book.Knows(At("T1", 1, "Other words, same thing."), "b"));
        Assert.False(book.Knows(At("T1", 2), "b"));
        Assert.False(book.Knows(At("T2", 1), "b"));
        Assert.False(book.Knows(At("T1", 1), "c"));
        Assert.False(new BaselineBook(Of("b", At("RR1001", 1))).Knows(At("RR1001", 1), "b"));
    }

    [Fact]
    public void One_mended_and_one_new_of_the_same_rule_is_not_the_same_number_but_a_new_finding()
    {
        // A baseline of counts would see one finding before and one after, and say nothing.
        var check = new BaselineBook(Of("b", At("T1", 1))).Apply(Check(At("T1", 2)), "b");

        Assert.Single(check.Result.Findings);
        Assert.Single(check.Gone);
    }

    [Fact]
    public void An_update_takes_out_what_is_gone_and_never_adds()
    {
        var book = new BaselineBook(Of("b", At("T1", 1), At("T1", 2)));
        book.Apply(Check(At("T1", 1), At("T1", 3)), "b");

        Assert.Equal(Of("b", At("T1", 1)), book.Updated());
    }

    [Fact]
    public void An_update_keeps_what_was_not_looked_at_or_could_not_be_decided()
    {
        var before = new Baseline { Documents = [.. Of("a", At("T1", 1)).Documents, .. Of("b", At("T3", 1), At("T5", 1)).Documents] };
        var book = new BaselineBook(before);

        // In the sample T3 could not decide, and T5 did not run.
        var check = book.Apply(Check(), "b");

        Assert.Empty(check.Gone);
        Assert.Equal(before, book.Updated());
        book.Apply(ReportSamples.Unreadable, "a");
        Assert.Equal(before, book.Updated());
    }

    [Fact]
    public void A_document_without_findings_leaves_the_baseline()
    {
        var book = new BaselineBook(Of("b", At("T1", 1)));
        book.Apply(Check(), "b");

        Assert.Empty(book.Updated().Documents);
    }

    [Fact]
    public void With_everything_accepted_the_baseline_knows_what_is_found_now()
    {
        var book = new BaselineBook(Of("b", At("T1", 1)), acceptsAll: true);
        var check = book.Apply(Check(At("T2", 7), At("T1", 2)), "b");

        Assert.Empty(check.Result.Findings);
        Assert.Equal(2, check.Known.Count);
        Assert.Equal(Of("b", At("T1", 2), At("T2", 7)), book.Updated());
    }

    [Fact]
    public void A_document_that_cannot_be_read_is_never_accepted()
    {
        var book = new BaselineBook(new Baseline(), acceptsAll: true);
        var check = book.Apply(ReportSamples.Unreadable, "d");

        Assert.Equal(ReportSamples.Unreadable.Result.Findings, check.Result.Findings);
        Assert.Empty(book.Updated().Documents);
    }

    [Fact]
    public void What_is_waived_is_no_debt_any_more()
    {
        var waiver = new Waiver
        {
            Rule = "T1",
            Reason = "R",
            Owner = "O",
            Expires = DateOnly.MaxValue,
            Scope = ["**"],
            Fingerprint = At("T1", 1).Fingerprint(),
        };
        var book = new BaselineBook(Of("b", At("T1", 1)));
        var check = book.Apply(Check() with { Waived = [new WaivedFinding { Finding = At("T1", 1), Waiver = waiver }] }, "b");

        Assert.Empty(check.Gone);
        Assert.Empty(book.Updated().Documents);
    }

    [Fact]
    public void Nothing_stands_in_a_baseline_twice()
    {
        var once = Of("b", At("T1", 1)).Documents[0];
        var twice = new Baseline { Documents = [once, once, once with { Path = "c", Findings = [.. once.Findings, .. once.Findings] }] };

        Assert.Equal(["/documents/1/path", "/documents/2/findings/1"], WaiverCheck.Problems(twice).Select(problem => problem.Pointer));
        Assert.Throws<ArgumentException>(() => new BaselineBook(twice));
    }
}
