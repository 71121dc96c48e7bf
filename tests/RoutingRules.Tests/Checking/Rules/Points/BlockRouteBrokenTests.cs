using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Points;

public sealed class BlockRouteBrokenTests
{
    private static readonly BlockRouteBroken Rule = new();

    /// <summary>A card with 16 buses that it moves in blocks of 4 to two groups of 16 and 8 outputs.</summary>
    private static DeviceProfile Card(bool reordering, int blockSize = 4) =>
        new()
        {
            Id = new("test/card"),
            Kind = DeviceKind.Processor,
            Name = "Test card",
            PortGroups =
            [
                SmallProfiles.Group("bus", PortKind.Source, 16),
                SmallProfiles.Group("a", PortKind.Output, 16),
                SmallProfiles.Group("b", PortKind.Output, 8),
            ],
            Routing =
            [
                SmallProfiles.Entry("bus", "a", RoutingMode.Block) with
                {
                    BlockSize = blockSize,
                    Reordering = reordering,
                },
                SmallProfiles.Entry("bus", "b", RoutingMode.Block) with
                {
                    BlockSize = blockSize,
                    Reordering = reordering,
                },
            ],
        };

    private static Show Patched(bool reordering, params Route[] routes) => Of(("card", Card(reordering))).With(routes);

    [Fact]
    public void A_block_with_a_channel_missing_gives_one_finding() =>
        Expect.One(
            Rule,
            Patched(false, Route("card/bus/1-3", "card/a/1-3")),
            Severity.Error,
            "/patch/routes/0",
            "'a' of 'card' takes channels of card/bus/1-4 in blocks of 4, but 4 is missing.",
            "block=card/bus/1-4",
            "to=card/a"
        );

    [Fact]
    public void A_run_that_starts_between_two_blocks_is_one_finding_about_both() =>
        Expect.One(
            Rule,
            Patched(true, Route("card/bus/9-12", "card/b/1-4"), Route("card/bus/3-6", "card/a/1-4")),
            Severity.Error,
            "/patch/routes/1",
            "'a' of 'card' takes channels of card/bus/1-8 in blocks of 4, but the run starts between two blocks.",
            "block=card/bus/1-8",
            "to=card/a"
        );

    [Fact]
    public void A_block_taken_twice_gives_one_finding() =>
        Expect.One(
            Rule,
            Patched(true, Route("card/bus/5-8", "card/a/1-4"), Route("card/bus/5-8", "card/a/9-12")),
            Severity.Error,
            "/patch/routes/0",
            "'a' of 'card' takes channels of card/bus/5-8 in blocks of 4, but 5, 6, 7 and 8 are taken more than once.",
            "block=card/bus/5-8",
            "to=card/a"
        );

    [Fact]
    public void One_channel_in_the_place_of_its_neighbour_is_one_finding() =>
        Expect.One(
            Rule,
            Patched(false, Route("card/bus/1-2", "card/a/1-2"), Route("card/bus/4", "card/a/3"), Route("card/bus/4", "card/a/4")),
            Severity.Error,
            "/patch/routes/0",
            "'a' of 'card' takes channels of card/bus/1-4 in blocks of 4, but 3 is missing and 4 taken more than once.",
            "block=card/bus/1-4",
            "to=card/a"
        );

    [Fact]
    public void A_whole_block_to_two_groups_gives_one_finding() =>
        Expect.One(
            Rule,
            Patched(true, Route("card/bus/1-8", "card/a/1-8"), Route("card/bus/1-8", "card/b/1-8")),
            Severity.Error,
            "/patch/routes/1",
            "'card' sends each block of 4 to one place, but card/bus/1-8 goes to 'a' and to 'b'.",
            "block=card/bus/1-8",
            "to=card/a",
            "to=card/b"
        );

    [Fact]
    public void Channels_out_of_order_give_one_finding_where_the_device_cannot_reorder()
    {
        var routes = new[]
        {
            Route("card/bus/1-2", "card/a/1-2"),
            Route("card/bus/4", "card/a/3"),
            Route("card/bus/3", "card/a/4"),
            Route("card/bus/5-8", "card/a/5-8"),
        };

        Expect.None(Rule, Patched(true, routes));
        Expect.One(
            Rule,
            Patched(false, routes),
            Severity.Error,
            "/patch/routes/1",
            "'card' cannot change the order of channels between 'bus' and 'a', but these are out of order: bus/4 at a/3 and bus/3 at a/4.",
            "from=card/bus",
            "to=card/a"
        );
    }

    [Fact]
    public void Two_groups_may_have_two_distances() =>
        Expect.None(Rule, Patched(false, Route("card/bus/1-8", "card/a/5-12"), Route("card/bus/9-16", "card/b/1-8")));

    [Fact]
    public void Whole_blocks_may_start_anywhere_at_the_sinks() => Expect.None(Rule, Patched(false, Route("card/bus/5-8", "card/a/2-5")));

    [Fact]
    public void Factory_routes_count_and_a_route_that_tears_one_apart_is_pointed_at()
    {
        var card = Card(false) with { FactoryRoutes = [SmallProfiles.Factory("bus", 1, 8, "a", 1)] };

        Expect.None(Rule, Of(("card", card)));
        Expect.One(
            Rule,
            Of(("card", card)).With(Route("card/bus/9-12", "card/b/1-4"), Route("card/bus/1", "card/a/2")),
            Severity.Error,
            "/patch/routes/1",
            "'a' of 'card' takes channels of card/bus/1-4 in blocks of 4, but 2 is missing and 1 taken more than once.",
            "block=card/bus/1-4",
            "to=card/a"
        );
        Assert.Equal("/rig/devices/0/profile", Assert.Single(RuleTester.Findings(Rule, Of(("card", card)).With(Route(null, "card/a/2")))).Pointer);
    }

    [Fact]
    public void Free_and_fixed_routing_and_unsound_profiles_give_none()
    {
        Expect.None(Rule, Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)).With(Route("desk/aux/1-3", "desk/transmit/2-4")));
        Expect.None(Rule, Of(("card", Card(false, 3))).With(Route("card/bus/1", "card/a/1")));
    }
}
