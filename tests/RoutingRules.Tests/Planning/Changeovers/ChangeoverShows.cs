using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Planning.Changeovers;

/// <summary>The shows that changeovers are tested from.</summary>
internal static class ChangeoverShows
{
    public static readonly RoutingEngine TestEngine = RoutingEngine.CreateBuilder().Build();

    public static readonly Show First = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box))
        .With(Stream("down", "desk/transmit/1-4", "box/receive/1-4"), Stream("up", "box/transmit/1-4", "desk/receive/1-4")) with
    {
        Feeds =
        [
            Feed("ears", FeedRole.InEar, "desk/aux/1", "box/out/1") with
            {
                Limiter = true,
                Pack = "1",
            },
            Feed("main", FeedRole.Main, "desk/aux/2", "box/out/2"),
        ],
        Lines = [Line("voice", "box/in/1", "desk/channel/1") with { Phantom = PhantomNeed.Required }, Line("guitar", "box/in/2", "desk/channel/2")],
    };

    public static Show FirstWithPhantom =>
        First with
        {
            Patch = First.Patch with
            {
                Inputs =
                [
                    new()
                    {
                        At = At("box/in/1"),
                        Phantom = true,
                        GainOwner = new("desk"),
                    },
                ],
            },
        };

    public static string[] Steps(Show before, Show after) =>
        [.. TestEngine.PlanChangeover(before, after).Steps.Select(step => $"{step.Phase} {step.Place}: {step.Text}")];
}
