using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Losses;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Networks;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Planning.Losses;

/// <summary>A desk and two boxes; a stream over one network, and another network that joins the same devices.</summary>
public sealed class OwnNetworkTests
{
    private static Show Joined(string by, string straight = "other") =>
        Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box))
            .With(Stream("s", "desk/transmit/1-4", "a/receive/1-4") with { Network = new(by) })
            .With(Route("desk/aux/1", "desk/transmit/1"), Route(null, "desk/transmit/2-4"))
            .WithNetwork("other")
            .With(
                NetworkShow.Link("one", "desk/net/1", "a/net/1"),
                NetworkShow.Link("two", "desk/net/2", "a/net/2", straight),
                NetworkShow.Link("three", "desk/net/1", "b/net/1"),
                NetworkShow.Link("four", "b/net/2", "a/net/2", "other")
            ) with
        {
            Feeds = [Feed("wedge", FeedRole.Monitor, "desk/aux/1", "a/out/1") with { Priority = Priority.Critical }],
        };

    private static ImpactAnswer Ask(Show show) =>
        Promise.Engine.Impact(
            show,
            new ImpactOptions
            {
                Recovery = false,
                Kinds = [LossKind.Link],
                SetSize = 2,
            }
        );

    private static LossImpact Loss(ImpactAnswer answer, string link) => answer.Losses.Single(loss => loss.Lost[0].Id == link);

    // Link two joins the same jacks on the other network, and links three and four do so on one and then the other: neither carries a stream of the first.
    [Fact]
    public void A_stream_does_not_go_on_over_links_of_another_network()
    {
        var answer = Ask(Joined("net"));

        Assert.Equal(["wedge"], Loss(answer, "one").Subjects.Select(lost => lost.Subject));
        Assert.Equal([At("a/out/1")], Loss(answer, "one").Outputs);
        Assert.Empty(Loss(answer, "one").Rerouted);
        Assert.Equal(
            [
                ["one"],
            ],
            Assert.Single(answer.FailureSets).Sets.Select(set => set.Select(thing => thing.Id))
        );
    }

    [Theory]
    [InlineData("two")]
    [InlineData("three")]
    [InlineData("four")]
    public void The_loss_of_a_link_of_another_network_is_nothing_to_a_stream(string link)
    {
        var loss = Loss(Ask(Joined("net")), link);

        Assert.Empty(loss.Subjects);
        Assert.Empty(loss.Rerouted);
        Assert.Empty(loss.Outputs);
    }

    // With link two on the stream's own network it goes on there, and only both together silence it.
    [Fact]
    public void A_second_link_of_its_own_network_carries_it_on()
    {
        var answer = Ask(Joined("net", straight: "net"));

        Assert.Empty(Loss(answer, "one").Subjects);
        Assert.Equal(["s"], Loss(answer, "one").Rerouted);
        Assert.Equal(
            [
                ["one", "two"],
            ],
            Assert.Single(answer.FailureSets).Sets.Select(set => set.Select(thing => thing.Id))
        );
    }

    [Fact]
    public void A_way_is_made_of_links_of_its_own_network()
    {
        var show = Promise.Resolve(Joined("net"));
        var model = new FailureModel(show);
        var (desk, a, b) = (show.Devices[0], show.Devices[1], show.Devices[2]);
        var lost = model.NewSet();

        Assert.Equal([0], model.Way(0, desk, a, lost));
        Assert.Equal([1], model.Way(1, desk, a, lost));
        Assert.Equal([1, 3], model.Way(1, desk, b, lost));
        lost.Links[0] = true;
        Assert.Null(model.Way(0, desk, a, lost));
        Assert.Equal([1], model.Way(1, desk, a, lost));
    }
}
