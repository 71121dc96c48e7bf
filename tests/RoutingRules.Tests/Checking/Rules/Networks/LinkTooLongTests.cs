using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

public sealed class LinkTooLongTests
{
    private static readonly LinkTooLong Rule = new();

    private static Show Of(double metres, Medium? medium) =>
        Boxes("a").With(Link("l", "desk/net/1", "a/net/1") with { LengthMetres = metres, Medium = medium });

    // ANSI/TIA-568: a channel of balanced pairs is 100 m long at most.
    [Fact]
    public void Copper_beyond_a_hundred_metres_is_an_error()
    {
        Expect.None(Rule, Of(100, Medium.CopperSolid));
        Expect.One(
            Rule,
            Of(100.5, Medium.CopperSolid),
            Severity.Error,
            "/rig/links/0",
            "Link 'l' from desk/net/1 to a/net/1 is 100.5 m long, but copper links work up to 100 m.",
            "link=l"
        );
        Assert.Equal(Severity.Error, Assert.Single(RuleTester.Findings(Rule, Of(101, Medium.CopperStranded))).Severity);
    }

    // Cord formula of ANSI/TIA-568 (from memory) without any fixed cable: (102 - 0) / (1 + 0.2) = 85 m at 20 % more loss.
    [Fact]
    public void Stranded_copper_beyond_85_metres_is_a_warning()
    {
        Expect.None(Rule, Of(85, Medium.CopperStranded));
        Expect.One(
            Rule,
            Of(90, Medium.CopperStranded),
            Severity.Warning,
            "/rig/links/0",
            "Link 'l' from desk/net/1 to a/net/1 is 90 m long, but stranded cores lose more and work up to 85 m.",
            "link=l"
        );
    }

    // The same formula at 50 % more loss: 102 / 1.5 = 68 m.
    [Fact]
    public void The_figures_can_be_set()
    {
        Assert.Single(NetworkShow.Set(Rule, Of(70, Medium.CopperStranded), "maximumStrandedMetres", 68));
        Assert.Empty(NetworkShow.Set(Rule, Of(110, Medium.CopperSolid), "maximumMetres", 120));
    }

    // Figures from memory (IEEE 802.3, clauses 26, 38, 52; IEEE 802.3an for category 6) but 100 m (ANSI/TIA-568).
    [Theory]
    [InlineData("cat5e", 1000, 100)]
    [InlineData("cat6", 1000, 100)]
    [InlineData("cat6", 10_000, 55)]
    [InlineData("cat6a", 10_000, 100)]
    [InlineData("om1", 1000, 275)]
    [InlineData("om2", 1000, 550)]
    [InlineData("om3", 1000, 550)]
    [InlineData("om1", 10_000, 33)]
    [InlineData("om2", 10_000, 82)]
    [InlineData("om3", 10_000, 300)]
    [InlineData("om4", 10_000, 400)]
    [InlineData("om5", 10_000, 400)]
    [InlineData("om4", 100, 2000)]
    [InlineData("os2", 1000, 5000)]
    [InlineData("fibre-singlemode", 10_000, 10_000)]
    [InlineData("fibre-multimode", 100, 2000)]
    public void Each_medium_reaches_so_far(string medium, int speed, double metres)
    {
        Assert.Empty(RuleTester.Run(Rule, At(metres, medium, speed)).Findings);
        Assert.EndsWith($" up to {metres} m.", Assert.Single(RuleTester.Findings(Rule, At(metres + 1, medium, speed))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Fibre_beyond_its_grade_is_a_warning() =>
        Expect.One(
            Rule,
            At(600, "om3", 1000),
            Severity.Warning,
            "/rig/links/0",
            "Link 'l' from desk/net/1 to a/net/1 is 600 m long, but om3 at 1000 Mbit/s works with the usual optics up to 550 m.",
            "link=l"
        );

    // AES10: coaxial about 100 m, multimode fibre 2 km (handbook excerpt and encyclopaedia).
    [Theory]
    [InlineData("coax", 100)]
    [InlineData("fibre-multimode", 2000)]
    public void A_digital_multicore_reaches_so_far(string medium, double metres)
    {
        Expect.None(Rule, At(metres, medium, 125).With(Transport.PointToPoint));
        Assert.Equal(Severity.Warning, Assert.Single(RuleTester.Findings(Rule, At(metres + 1, medium, 125).With(Transport.PointToPoint))).Severity);
    }

    [Theory]
    [InlineData("radio", 1000)]
    [InlineData("coax", 1000)]
    [InlineData("om3", 40_000)]
    public void Where_no_figure_is_known_there_is_nothing_to_look_at(string medium, int speed) =>
        Assert.Equal(RuleStatus.NotApplicable, Assert.Single(RuleTester.Run(Rule, At(400, medium, speed)).Rules).Status);

    [Theory]
    [InlineData(
        "fibre-multimode",
        1000,
        400,
        "Whether fibre-multimode of the length of link 'l' works depends on its speed and grade, which are not all stated."
    )]
    [InlineData("cat6", 1000, 90, "Whether the cores of link 'l' are solid or stranded is not stated: stranded ones would be too long.")]
    [InlineData("cat5e", 10_000, 10, "How far cat5e reaches at the speed of link 'l' is not known: it is not made for it.")]
    public void What_the_document_leaves_open_is_not_decided(string medium, int speed, double metres, string reason)
    {
        var result = RuleTester.Run(Rule, At(metres, medium, speed));

        Assert.Empty(result.Findings);
        Assert.Equal(reason, Assert.Single(result.Undecided).Reason);
    }

    private static Show At(double metres, string medium, int speed) =>
        Boxes("a").With(Link("l", "desk/net/1", "a/net/1") with { LengthMetres = metres, Medium = new Medium(medium), SpeedMbps = speed });

    [Fact]
    public void A_long_link_of_nothing_stated_is_not_decided()
    {
        Expect.None(Rule, Of(100, null));
        var result = RuleTester.Run(Rule, Of(120, null));

        Assert.Empty(result.Findings);
        Assert.Equal("What link 'l' is made of is not stated: as copper it would be too long.", Assert.Single(result.Undecided).Reason);
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
