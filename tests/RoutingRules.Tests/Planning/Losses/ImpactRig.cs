using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Losses;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Planning.Losses;

/// <summary>A small rig to lose things of.</summary>
internal static class ImpactRig
{
    public static readonly Show Stage = Make();

    public static Show Make()
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.FreeBox), ("b", SmallProfiles.FreeBox), ("amp", SmallProfiles.Amplifier));
        var streamed = (
            show with
            {
                Rig = show.Rig with
                {
                    Clocks =
                    [
                        new()
                        {
                            Id = new("c"),
                            SampleRate = 48000,
                            Leader = new("desk"),
                        },
                    ],
                    Links = [Link("trunk", "desk/net/1", "a/net/1"), Link("cross", "a/net/2", "b/net/1")],
                    Cables = [Cable("a/out/1", "amp/in/1") with { Way = "loom 1" }, Cable("a/out/2", "amp/in/2") with { Way = "loom 2" }],
                    Devices = show.Rig.Devices.Select(device => device with { Power = device.Id.Value is "a" or "amp" ? [new("stage")] : [] }).ToValueList(),
                },
                Feeds =
                [
                    Feed("main", FeedRole.Main, "desk/main/1", "amp/in/1") with
                    {
                        Priority = Priority.Critical,
                    },
                    Feed("spare", FeedRole.Fill, "desk/main/1", "b/out/1") with
                    {
                        BackupOf = new Id<Feed>("main"),
                    },
                    Feed("ears", FeedRole.InEar, "desk/aux/1", "a/out/3") with
                    {
                        Person = "singer",
                        Limiter = true,
                    },
                    Feed("wedges", FeedRole.Monitor, "desk/aux/2", "a/out/4", "b/out/4"),
                ],
                Lines = [Line("voice", "a/in/1", "desk/channel/1") with { Phantom = PhantomNeed.Required }],
            }
        ).With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4", "b/receive/1-4"), Stream("s2", "a/transmit/1-4", "desk/receive/1-4"));
        return streamed.With(
            Route("desk/main/1", "desk/transmit/1"),
            Route("desk/aux/1", "desk/transmit/3"),
            Route("desk/aux/2", "desk/transmit/4"),
            Route(null, "desk/transmit/2"),
            Route("a/receive/1", "a/out/1"),
            Route("a/receive/3-4", "a/out/3-4"),
            Route("b/receive/1", "b/out/1"),
            Route("b/receive/4", "b/out/4"),
            Route("a/in/1", "a/transmit/1"),
            Route("desk/receive/1", "desk/channel/1")
        );
    }

    public static Link Link(string id, string from, string to) =>
        new()
        {
            Id = new(id),
            Network = new("net"),
            From = At(from),
            To = At(to),
        };

    public static ImpactAnswer Ask(Show show, ImpactOptions? options = null) => Promise.Engine.Impact(show, options);

    public static LossImpact Loss(ImpactAnswer answer, string id) => Assert.Single(answer.Losses, loss => loss.Lost[0].Id == id);

    public static string? Carried(Show show, string at)
    {
        var after = Promise.Resolve(RemovalOracle.Without(show, [new LostThing { Kind = LossKind.Device, Id = "left" }]));
        return RemovalOracle.Source(after, after, At(at)[0]).ToString();
    }

    public static Show Ring => Stage with { Rig = Stage.Rig with { Links = Stage.Rig.Links.Append(Link("ring", "desk/net/2", "b/net/2")).ToValueList() } };
}
