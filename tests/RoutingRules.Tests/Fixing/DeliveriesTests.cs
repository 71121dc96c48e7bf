using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Fixing;

public sealed class DeliveriesTests
{
    private static readonly Show Whole = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
    {
        Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/5", "desk/out/1", "desk/out/2")],
        Lines = [Line("voice", "desk/in/1", "desk/channel/1", "desk/channel/2")],
        Patch = new Patch
        {
            Routes =
            [
                Route("desk/aux/5", "desk/out/1"),
                Route("desk/aux/5", "desk/out/2"),
                Route("desk/in/1", "desk/channel/1"),
                Route("desk/in/1", "desk/channel/2"),
            ],
        },
    };

    private static ResolvedShow Resolved(Show show) => RoutingEngine.CreateBuilder().Build().Resolve(show);

    private static Show Without(int route) => Whole.With([.. Whole.Patch.Routes.Where((_, i) => i != route)]);

    private static string? Lost(Show before, Show after) => Deliveries.Lost(Resolved(before), Resolved(after));

    [Fact]
    public void What_arrived_and_does_no_longer_is_named()
    {
        Assert.Equal("'mix (1 of 2)'", Lost(Whole, Without(0)));
        Assert.Equal("'mix (2 of 2)'", Lost(Whole, Without(1)));
        Assert.Equal("'voice' at desk/channel/2", Lost(Whole, Without(3)));
    }

    [Fact]
    public void What_did_not_arrive_cannot_be_lost()
    {
        Assert.Null(Lost(Whole, Whole));
        Assert.Null(Lost(Without(1), Without(1)));
        Assert.Null(Lost(Without(0), Whole));
    }

    [Fact]
    public void A_wish_that_is_taken_out_or_stands_at_another_position_is_not_missed()
    {
        var second = Whole.Feeds[0] with { To = [Whole.Feeds[0].To[1]] };

        Assert.Null(Lost(Whole, Without(0) with { Feeds = [second] }));
        Assert.Equal("'mix (2 of 2)'", Lost(Whole, Without(1) with { Feeds = [second] }));
    }
}
