using System.Text;
using RoutingRules.Checking.Catalogue;
using RoutingRules.Documents.Tables;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Tests.Reports;
using RoutingRules.Waivers;

namespace RoutingRules.Tests.Engine.DocumentRuns;

public sealed class WaiverBookTests
{
    private static readonly DateOnly Day = new(2027, 6, 12);
    private static readonly Entity Output = Entity.Of("output", "box/out/5");
    private static readonly ValueList<RuleDescriptor> Catalogue =
    [
        ReadingRules.ValueMalformed,
        WaiverRules.WaiverStale,
        ReportSamples.Rule("T1", Severity.Warning),
        ReportSamples.Rule("T2", Severity.Error),
        ReportSamples.Rule("T3", Severity.Error),
    ];

    private static readonly Waiver Usual = new()
    {
        Rule = "T1",
        Entities = [Output],
        Reason = "Known",
        Owner = "Mira",
        Expires = Day,
        Scope = ["**"],
    };

    private static WaiverBook Book(params Waiver[] waivers) => new(new WaiverList { Waivers = waivers.ToValueList() }, Catalogue, Day);

    private static DocumentCheck Report(WaiverBook book, string text = "{}") => book.Report("waivers.json", Encoding.UTF8.GetBytes(text));

    [Fact]
    public void A_waiver_takes_exactly_its_findings_and_leaves_the_others_in_order()
    {
        var book = Book(Usual);
        var check = book.Apply(ReportSamples.Mixed, "b.show.json");

        Assert.Equal(["First.", "Second."], check.Waived.Select(waived => waived.Finding.Message));
        Assert.Equal(["Third.", "Fourth.", "Fifth."], check.Result.Findings.Select(finding => finding.Message));
        Assert.Equal(ReportSamples.Mixed.Result.Rules, check.Result.Rules);
        Assert.All(check.Waived, waived => Assert.Equal(Usual, waived.Waiver));
        Assert.Empty(Report(book).Result.Findings);
    }

    [Fact]
    public void One_finding_is_judged_as_the_whole_document_is()
    {
        var mixed = ReportSamples.Mixed.Result.Findings;
        foreach (
            var waiver in new[]
            {
                Usual,
                Usual with
                {
                    Rule = "T2",
                },
                Usual with
                {
                    Expires = Day.AddDays(-1),
                },
                Usual with
                {
                    Scope = ["x", "a*"],
                },
                Usual with
                {
                    Scope = ["x", "b*"],
                },
                Usual with
                {
                    Entities = [Output, Entity.Of("feed", "mon")],
                },
                Usual with
                {
                    Entities = default,
                    Fingerprint = mixed[2].Fingerprint(),
                    Rule = "T2",
                },
            }
        )
        {
            var book = Book(waiver);
            var excused = mixed.Where(finding => book.Excuses(finding, "b.show.json")).ToList();
            Assert.Equal(excused, Book(waiver).Apply(ReportSamples.Mixed, "b.show.json").Waived.Select(waived => waived.Finding));
        }

        Assert.True(Book(Usual).Excuses(mixed[0], "b.show.json"));
    }

    [Fact]
    public void A_fingerprint_means_one_finding()
    {
        var other = ReportSamples.Mixed.Result.Findings[1] with { Entities = [Entity.Of("output", "box/out/6")] };
        var document = ReportSamples.Mixed with { Result = ReportSamples.Mixed.Result with { Findings = [ReportSamples.Mixed.Result.Findings[0], other] } };
        var check = Book(Usual with { Entities = default, Fingerprint = other.Fingerprint() }).Apply(document, "b.show.json");

        Assert.Equal("Second.", Assert.Single(check.Waived).Finding.Message);
        Assert.Equal("First.", Assert.Single(check.Result.Findings).Message);
    }

    [Fact]
    public void A_finding_is_meant_only_when_it_names_all_entities_of_the_waiver()
    {
        var finding = ReportSamples.Mixed.Result.Findings[0] with { Entities = [Entity.Of("feed", "mon"), Output] };
        var document = ReportSamples.Mixed with { Result = ReportSamples.Mixed.Result with { Findings = [finding] } };

        Assert.Single(Book(Usual).Apply(document, "a").Waived);
        Assert.Single(Book(Usual with { Entities = [Output, Entity.Of("feed", "mon")] }).Apply(document, "a").Waived);
        Assert.Empty(Book(Usual with { Entities = [Output, Entity.Of("feed", "sub")] }).Apply(document, "a").Waived);
        Assert.Empty(Book(Usual with { Entities = [Entity.Of("input", Output.Id)] }).Apply(document, "a").Waived);
    }

    [Fact]
    public void A_point_that_joined_the_finding_is_not_excused()
    {
        var finding = ReportSamples.Mixed.Result.Findings[0] with { Entities = [Entity.Of("device", "box"), Output, Entity.Of("output", "box/out/6")] };
        var document = ReportSamples.Mixed with { Result = ReportSamples.Mixed.Result with { Findings = [finding] } };

        Assert.Empty(Book(Usual).Apply(document, "a").Waived);
        Assert.Single(Book(Usual with { Entities = [Output, Entity.Of("output", "box/out/6")] }).Apply(document, "a").Waived);
        Assert.Single(Book(Usual with { Entities = [Entity.Of("device", "box")] }).Apply(document, "a").Waived);
    }

    [Theory]
    [InlineData(-1, false)]
    [InlineData(0, true)]
    [InlineData(1, true)]
    public void The_last_day_still_counts(int days, bool isWaived)
    {
        var book = Book(Usual with { Expires = Day.AddDays(days) });
        var check = book.Apply(ReportSamples.Mixed, "b.show.json");

        Assert.Equal(isWaived ? 2 : 0, check.Waived.Count);
        Assert.Equal(isWaived ? [] : ["RR1011"], Report(book).Result.Findings.Select(finding => finding.Rule));
    }

    [Fact]
    public void An_expired_waiver_is_a_finding_with_its_place_in_the_file()
    {
        var book = Book(Usual, Usual with { Rule = "T2", Expires = new DateOnly(2027, 5, 1) });
        book.Apply(ReportSamples.Mixed, "b.show.json");
        var check = Report(book, "{ \"waivers\": [\n  {},\n  {} ] }");
        var finding = Assert.Single(check.Result.Findings);

        Assert.Equal("waivers.json", check.Path);
        Assert.Equal(DocumentStatus.Findings, check.Status);
        Assert.Equal((Severity.Warning, "/waivers/1", 3, 3), (finding.Severity, finding.Pointer, finding.Line, finding.Column));
        Assert.Equal("The waiver of T2 t2 (output box/out/5) by Mira ended on 2027-05-01 and excuses nothing any more.", finding.Message);
    }

    [Fact]
    public void A_waiver_that_fits_nothing_is_stale_when_its_rule_could_decide()
    {
        var stale = Usual with { Entities = [Entity.Of("output", "box/out/9")] };
        var book = Book(stale);
        book.Apply(ReportSamples.Mixed, "b.show.json");

        Assert.Equal("RR1012", Assert.Single(Report(book).Result.Findings).Rule);
    }

    [Fact]
    public void A_waiver_is_not_called_stale_without_evidence()
    {
        // T3 could not decide; T5 does not exist in the run; the last one covers no document; an unreadable document says nothing.
        var undecided = Book(Usual with { Rule = "T3" });
        undecided.Apply(ReportSamples.Mixed, "b.show.json");
        var elsewhere = Book(Usual with { Scope = ["other/**"], Expires = Day.AddDays(-9) });
        elsewhere.Apply(ReportSamples.Mixed, "b.show.json");
        var unread = Book(Usual with { Rule = "T2" });
        unread.Apply(ReportSamples.Unreadable, "d.show.json");
        var off = Book(Usual);
        off.Apply(ReportSamples.Clean with { Result = ReportSamples.Clean.Result with { Rules = [] } }, "a.show.json");

        Assert.All([undecided, elsewhere, unread, off], book => Assert.Empty(Report(book).Result.Findings));
    }

    [Fact]
    public void Of_several_waivers_the_first_that_has_not_expired_counts_and_none_of_them_is_stale()
    {
        var book = Book(
            Usual with
            {
                Expires = Day.AddDays(-1),
                Owner = "A",
            },
            Usual with
            {
                Owner = "B",
                Scope = ["b*"],
            },
            Usual with
            {
                Owner = "C",
                Scope = ["*"],
            }
        );
        var check = book.Apply(ReportSamples.Mixed, "b.show.json");

        Assert.All(check.Waived, waived => Assert.Equal("B", waived.Waiver.Owner));
        Assert.Equal(["RR1011"], Report(book).Result.Findings.Select(finding => finding.Rule));
    }

    [Theory]
    [InlineData("T9", "There is no rule 'T9'")]
    [InlineData("RR1007", "cannot be waived")]
    [InlineData("waiver-stale", "cannot be waived")]
    public void Rules_that_there_are_not_and_rules_of_reading_cannot_be_waived(string rule, string expected)
    {
        var list = new WaiverList { Waivers = [Usual with { Rule = rule }] };
        var problem = Assert.Single(WaiverCheck.Problems(list, Catalogue));

        Assert.Contains(expected, problem.Message, StringComparison.Ordinal);
        Assert.Equal("/waivers/0/rule", problem.Pointer);
        Assert.Throws<ArgumentException>(() => new WaiverBook(list, Catalogue, Day));
    }

    [Fact]
    public void Slips_of_the_pen_in_waivers_are_told_with_their_places()
    {
        var list = new WaiverList { Waivers = [Usual with { Reason = "  " }, Usual with { Owner = "\u00a0", Scope = ["a", "b\\c"] }, Usual] };

        Assert.Equal(
            ["/waivers/0/reason", "/waivers/1/owner", "/waivers/1/scope/1", "/waivers/2"],
            WaiverCheck.Problems(list, Catalogue).Select(problem => problem.Pointer)
        );
    }

    [Fact]
    public void Waivers_with_the_same_target_have_identities_of_their_own_by_scope()
    {
        var book = Book(Usual with { Expires = Day.AddDays(-1), Scope = ["a*"] }, Usual with { Expires = Day.AddDays(-1), Scope = ["b*"] });
        book.Apply(ReportSamples.Clean, "a.show.json");
        book.Apply(ReportSamples.Mixed, "b.show.json");

        Assert.Equal(2, Report(book).Result.Findings.Select(finding => finding.Fingerprint()).Distinct().Count());
    }
}
