using RoutingRules.Model;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Assignment;

/// <summary>How many places there are is said in words that fit one, several, single points and pairs.</summary>
public sealed class UnplacedReasonTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    /// <summary>A feed that may leave from any of the console's own outputs.</summary>
    private static Show Desk(int outputs, string source) =>
        Of(("desk", SmallProfiles.Console))
            .WithProfile(
                "desk",
                profile =>
                    profile with
                    {
                        FactoryRoutes = [],
                        PortGroups = [.. profile.PortGroups.Select(group => group.Id.Value == "out" ? group with { Count = outputs } : group)],
                    }
            ) with
        {
            Feeds = [FeedTo("mix", FeedRole.Monitor, source, "desk")],
        };

    private static string Reason(Show show) => Assert.Single(Engine.Assign(show).Unplaced).Reason;

    [Theory]
    [InlineData(1, "desk/aux/1", "Its only place is dead, reserved or excluded; free one.")]
    [InlineData(2, "desk/aux/1", "All of its 2 points are dead, reserved or excluded; free one.")]
    [InlineData(2, "desk/aux/1-2", "Its only place is dead, reserved or excluded; free one.")]
    [InlineData(4, "desk/aux/1-2", "All of its 2 pairs of points are dead, reserved or excluded; free one.")]
    public void Places_that_are_dead_are_counted(int outputs, string source, string expected)
    {
        var show = Desk(outputs, source);

        Assert.Equal(
            expected,
            Reason(show with { Rig = show.Rig with { Unavailable = [new() { At = At(outputs == 1 ? "desk/out/1" : $"desk/out/1-{outputs}") }] } })
        );
    }

    [Theory]
    [InlineData(1, "It may take 1 point, and it is taken by first1/1; ")]
    [InlineData(2, "It may take 2 points, and all are taken by first1/1, first2/1; ")]
    public void Places_that_others_have_are_counted(int outputs, string expected)
    {
        var show = Desk(outputs, "desk/aux/1");
        var taken = Enumerable
            .Range(1, outputs)
            .Select(n => Feed($"first{n}", FeedRole.Monitor, $"desk/aux/{n + 1}", $"desk/out/{n}") with { Priority = Priority.Critical });

        Assert.StartsWith(expected, Reason(show with { Feeds = [.. taken, .. show.Feeds] }), StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_that_pins_contend_for_is_kept_for_them()
    {
        var show = Desk(1, "desk/aux/1");
        var pinned = Enumerable.Range(1, 2).Select(n => Feed($"first{n}", FeedRole.Monitor, $"desk/aux/{n + 1}", "desk/out/1"));

        var result = Engine.Assign(show with { Feeds = [.. pinned, .. show.Feeds] });

        Assert.Empty(result.Placements);
        Assert.StartsWith(
            "It may take 1 point, and it is taken by or kept for first1/1, first2/1; ",
            Assert.Single(result.Unplaced, entry => entry.Demand == "mix/1").Reason,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(2, "It may take 1 pair of points, and it is taken by first1/1; ")]
    [InlineData(4, "It may take 2 pairs of points, and all are taken by first1/1, first2/1; ")]
    public void Pairs_that_others_have_are_counted(int outputs, string expected)
    {
        var show = Desk(outputs, "desk/aux/1-2");
        var taken = Enumerable
            .Range(1, outputs / 2)
            .Select(n =>
                Feed($"first{n}", FeedRole.Monitor, $"desk/aux/{(2 * n) + 1}-{(2 * n) + 2}", $"desk/out/{(2 * n) - 1}-{2 * n}") with
                {
                    Priority = Priority.Critical,
                }
            );

        Assert.StartsWith(expected, Reason(show with { Feeds = [.. taken, .. show.Feeds] }), StringComparison.Ordinal);
    }
}
