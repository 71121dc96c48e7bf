using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class FeedEndsUncabledTests
{
    private static readonly FeedEndsUncabled Rule = new();

    private static Show Mixes(FeedRole last, params Cable[] cables)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier))
            .With(Stream("s", "desk/transmit/1-4", "box/receive/1-4"));
        return show with
        {
            Rig = show.Rig with { Cables = cables.ToValueList() },
            Feeds =
            [
                .. Enumerable.Range(1, 3).Select(number => Feed($"f{number}", FeedRole.Monitor, $"desk/aux/{number}", $"box/out/{number}")),
                Feed("f4", last, "desk/aux/4", "box/out/4"),
            ],
        };
    }

    [Fact]
    public void Uncabled_neighbours_of_cabled_outputs_are_one_note() =>
        Expect.One(
            Rule,
            Mixes(FeedRole.Monitor, Cable("box/out/1-2", "amp/in/1-2")),
            Severity.Note,
            "/feeds/2",
            "No cable leads on from box/out/3-4 ('f3' and 'f4'), although outputs beside them with the same task are cabled.",
            "output=box/out/3-4"
        );

    [Fact]
    public void One_cabled_neighbour_another_role_and_no_cables_at_all_say_nothing()
    {
        Expect.None(Rule, Mixes(FeedRole.Monitor, Cable("box/out/1", "amp/in/1")));
        Expect.None(Rule, Mixes(FeedRole.Fill, Cable("box/out/1-3", "amp/in/1-3")));
        Expect.None(Rule, Mixes(FeedRole.Monitor, Cable("box/out/1-4", "amp/in/1-4")));
        Expect.None(Rule, Mixes(FeedRole.Monitor));
    }
}
