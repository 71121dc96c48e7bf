using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Points;

public sealed class RouteWithoutEffectTests
{
    private static readonly RouteWithoutEffect Rule = new();

    private static Show Base => Of(("box", SmallProfiles.Box), ("can", SmallProfiles.ClearableBox), ("amp", SmallProfiles.Amplifier));

    [Fact]
    public void Another_source_at_a_fixed_sink_gives_one_finding() =>
        Expect.One(
            Rule,
            Base.With(Route("box/receive/2", "box/out/1")),
            Severity.Warning,
            "/patch/routes/0",
            "The route from box/receive/2 to box/out/1 has no effect: box/out/1 always carries box/receive/1.",
            "from=box/receive/2",
            "to=box/out/1"
        );

    [Fact]
    public void A_shifted_run_is_one_finding_in_any_order()
    {
        var routes = Enumerable.Range(1, 7).Select(n => Route($"box/receive/{n + 1}", $"box/out/{n}")).ToArray();

        Expect.One(
            Rule,
            Base.With([.. routes.Reverse()]),
            Severity.Warning,
            "/patch/routes/0",
            "The route from box/receive/2-8 to box/out/1-7 has no effect: box/out/1-7 always carry box/receive/1-7.",
            "from=box/receive/2-8",
            "to=box/out/1-7"
        );
    }

    [Fact]
    public void Clearing_a_sink_that_cannot_be_cleared_gives_one_finding() =>
        Expect.One(
            Rule,
            Base.With(Route(null, "box/out/1-4")),
            Severity.Warning,
            "/patch/routes/0",
            "box/out/1-4 cannot be set to nothing: they always carry box/receive/1-4.",
            "to=box/out/1-4"
        );

    [Fact]
    public void Clearing_the_output_of_a_processor_gives_one_finding() =>
        Expect.One(
            Rule,
            Base.With(Route(null, "amp/out/3")),
            Severity.Warning,
            "/patch/routes/0",
            "amp/out/3 cannot be set to nothing: it always carries amp/in/3.",
            "to=amp/out/3"
        );

    [Fact]
    public void Only_the_sinks_without_effect_are_named() =>
        Assert.Equal(
            "to=box/out/5-8",
            string.Join(
                " ",
                RuleTester
                    .Findings(Rule, Base.With(Route(null, "box/out/5-8"), Route("box/receive/1-4", "box/out/1-4")))
                    .Select(finding => $"{finding.Entities[0].Role}={finding.Entities[0].Id}")
            )
        );

    [Fact]
    public void The_fixed_source_itself_and_clearing_what_can_be_cleared_give_none() =>
        Expect.None(Rule, Base.With(Route("box/receive/3", "box/out/3"), Route(null, "can/out/1-4"), Route("can/receive/5", "can/out/5")));

    [Fact]
    public void Another_source_at_a_clearable_fixed_sink_has_no_effect_either() =>
        Expect.One(
            Rule,
            Base.With(Route("can/receive/2", "can/out/1")),
            Severity.Warning,
            "/patch/routes/0",
            "The route from can/receive/2 to can/out/1 has no effect: can/out/1 always carries can/receive/1.",
            "from=can/receive/2",
            "to=can/out/1"
        );

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_has_none_and_one_route_at_a_fixed_output_gives_one(CleanShow clean, byte output, byte shift)
    {
        var number = (output % 8) + 1;
        var other = ((number + (shift % 7)) % 8) + 1;
        var route = Route($"box-1/receive/{other}", $"box-1/out/{number}");

        Expect.None(Rule, clean.Show);
        Assert.Equal(route.To.ToString(), Assert.Single(RuleTester.Findings(Rule, clean.Show.With([.. clean.Show.Patch.Routes, route]))).Entities[1].Id);
    }
}
