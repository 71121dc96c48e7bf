using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Tests.Rules.Network.NetworkShow;

namespace RoutingRules.Tests.Rules.Network;

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

    [Fact]
    public void Fibre_coax_and_other_media_are_not_judged() =>
        Assert.All([Medium.FibreMultimode, Medium.FibreSinglemode, Medium.Coax, new Medium("radio")], medium => Expect.None(Rule, Of(400, medium)));

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
