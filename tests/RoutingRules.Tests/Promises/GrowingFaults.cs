using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Labels;
using RoutingRules.Checking.Rules.Lines;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Checking.Rules.Resilience;
using RoutingRules.Checking.Rules.Streams;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Labels;
using RoutingRules.Tests.Checking.Rules.Lines;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;
using static RoutingRules.Tests.Promises.GrowingFaultShows;

namespace RoutingRules.Tests.Promises;

/// <summary>The kinds of faults of which one more may come.</summary>
internal static class GrowingFaults
{
    /// <summary>For each kind the rule, how many places can have the fault, how many may have it at once, and the show in which some have it.</summary>
    public static readonly Dictionary<string, (Rule Rule, int Places, int AtOnce, Func<HashSet<int>, Show> Show)> Kinds = new(StringComparer.Ordinal)
    {
        ["phantom power unsaid"] = (
            new PhantomMissing(),
            4,
            4,
            faulty =>
                LineRig
                    .Show([.. Numbers(4).Select(Microphone)])
                    .Inputs([
                        LineRig.Phantom("box/in/5", true),
                        .. Numbers(4).Where(n => !faulty.Contains(n)).Select(n => LineRig.Phantom($"box/in/{n}", true)),
                    ])
        ),
        ["phantom power off"] = (
            new PhantomMissing(),
            4,
            4,
            faulty => LineRig.Show([.. Numbers(4).Select(Microphone)]).Inputs([.. Numbers(4).Select(n => LineRig.Phantom($"box/in/{n}", !faulty.Contains(n)))])
        ),
        ["phantom power fed twice"] = (
            new PhantomFedTwice(),
            2,
            2,
            faulty =>
                LineRig
                    .Show(Line("pair", "box/in/1-2", "desk/channel/1-2") with { From = new() { At = [At("box/in/1-2"), At("mon/in/1-2")] } })
                    .Inputs([LineRig.Phantom("mon/in/1-2", true), .. Numbers(2).Select(n => LineRig.Phantom($"box/in/{n}", faulty.Contains(n)))])
        ),
        ["gain without an owner"] = (
            new GainOwnerMissing(),
            4,
            4,
            faulty =>
                LineRig
                    .Show([.. Numbers(4).Select(n => Line($"l{n}", $"box/in/{n}", $"desk/channel/{n}", $"mon/channel/{n}"))])
                    .Inputs([.. Numbers(4).Where(n => !faulty.Contains(n)).Select(n => LineRig.Gain($"box/in/{n}", "desk", "mon"))])
        ),
        ["line on a second channel"] = (
            new LineOnTwoChannels(),
            4,
            4,
            faulty => LineRig.Show(Line("vox", "box/in/1", "desk/channel/1")).With([.. faulty.Select(n => Route("desk/receive/1", $"desk/channel/{n + 4}"))])
        ),
        ["line not at a channel"] = (
            new LineNotPatched(),
            4,
            4,
            faulty =>
                LineRig
                    .Show(Line("vox", "box/in/1", [.. Numbers(4).Select(n => $"desk/channel/{n + 4}")]))
                    .With([.. Numbers(4).Select(n => Route(faulty.Contains(n) ? null : "desk/receive/1", $"desk/channel/{n + 4}"))])
        ),
        ["feed lost at one of its places"] = (new FanOutLost(), 4, 3, faulty => Sent(Numbers(4).Where(n => !faulty.Contains(n)))),
        ["late feeds"] = (
            new LatencyExceeded(),
            4,
            4,
            faulty =>
                Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box))
                    .WithProfile("box", profile => profile with { LatencyMilliseconds = [new() { Group = new("out"), Value = 12 }] })
                    .With(Stream("s", "desk/transmit/1-4", "box/receive/1-4")) with
                {
                    Feeds = [.. faulty.Order().Select(LabelRig.Mix)],
                }
        ),
        ["label missing"] = (
            new LabelMissing(),
            8,
            3,
            faulty =>
                Sent(Numbers(8), 8) with
                {
                    Feeds = [.. Numbers(8).Select(LabelRig.Mix)],
                    Patch = Sent(Numbers(8), 8).Patch with
                    {
                        Labels = [.. Numbers(8).Where(n => !faulty.Contains(n)).Select(n => LabelRig.Label($"box/out/{n}", $"MIX {n}"))],
                    },
                }
        ),
        ["idle cables"] = (new OutputOrphaned(), 4, 4, faulty => LineRig.Show().Cables([.. faulty.Order().Select(n => Cable($"box/out/{n}", $"amp/in/{n}"))])),
        ["outputs left as from the factory"] = (
            new OutputStray(),
            2,
            2,
            faulty =>
                Of(("desk", SmallProfiles.Console))
                    .WithProfile(
                        "desk",
                        profile =>
                            profile with
                            {
                                PortGroups = [.. profile.PortGroups.Select(group => group.Id.Value is "main" or "out" ? group with { Count = 3 } : group)],
                                FactoryRoutes = [SmallProfiles.Factory("main", 1, 3, "out", 1)],
                            }
                    ) with
                {
                    Feeds = [.. Numbers(3).Where(n => !faulty.Contains(n)).Select(n => Feed($"m{n}", FeedRole.Utility, $"desk/main/{n}", $"desk/out/{n}"))],
                }
        ),
        ["nothing to take over"] = (
            new SpareMissing(),
            2,
            2,
            faulty =>
                Of(("desk", SmallProfiles.Console)) with
                {
                    Feeds =
                    [
                        .. Numbers(2).Select(n => Feed($"m{n}", faulty.Contains(n) ? FeedRole.Main : FeedRole.Utility, $"desk/main/{n}", $"desk/out/{n}")),
                    ],
                }
        ),
        ["stream beyond the limit"] = (
            new StreamLimitExceeded(),
            4,
            4,
            faulty =>
                Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("two", SmallProfiles.Box))
                    .WithProfile(
                        "desk",
                        profile =>
                            profile with
                            {
                                PortGroups = [.. profile.PortGroups.Select(group => group.Id.Value == "transmit" ? group with { Count = 20 } : group)],
                                Limits = new() { StreamsSent = 1 },
                            }
                    )
                    .With([
                        Stream("s0", "desk/transmit/17-20", "two/receive/1-4"),
                        .. faulty.Order().Select(n => Stream($"s{n}", $"desk/transmit/{(4 * n) - 3}-{4 * n}", "box/receive/1-4")),
                    ])
        ),
        ["link filled further"] = (
            new LinkReservationExceeded(),
            4,
            4,
            faulty =>
                Linked(
                    [
                        Stream("s0", "desk/transmit/1-8", "a/receive/1-8"),
                        .. faulty.Order().Select(n => Stream($"s{n}", $"desk/transmit/{(8 * n) + 1}-{(8 * n) + 8}", "a/receive/1-8")),
                    ],
                    Link("l", "desk/net/1", "a/net/1") with
                    {
                        SpeedMbps = faulty.Count > 0 ? 20 : 1000,
                    }
                )
        ),
        ["way too long"] = (
            new HopsExceeded(),
            3,
            3,
            faulty =>
                Linked(
                        [.. faulty.Order().Select(n => Stream($"s{n}", "desk/transmit/1-4", $"{"abc"[n - 1]}/receive/1-4"))],
                        Link("l1", "desk/net/1", "a/net/1"),
                        Link("l2", "a/net/2", "b/net/1"),
                        Link("l3", "b/net/2", "c/net/1")
                    )
                    .WithProfile("desk", profile => profile with { Limits = new() { Hops = 0 } })
        ),
        ["stream on a way too long"] = (
            new HopsExceeded(),
            3,
            3,
            faulty =>
                Linked([.. faulty.Order().Select(n => Stream($"s{n}", $"desk/transmit/{n}", $"a/receive/{n}"))], Link("l1", "desk/net/1", "a/net/1"))
                    .WithProfile("desk", profile => profile with { Limits = new() { Hops = 0 } })
        ),
        ["late place of a feed"] = (
            new LatencySpread(),
            3,
            3,
            faulty => Late([Feed("sub", FeedRole.Sub, "desk/aux/1", ["box/out/1", .. faulty.Order().Select(n => $"b{n}/out/1")])])
        ),
        ["late part of a set"] = (
            new LatencySpread(),
            3,
            3,
            faulty =>
                Late([
                    .. faulty.Order().Select(n => Feed($"f{n}", FeedRole.Fill, $"desk/aux/{n}", $"b{n}/out/{n}") with { Set = "low" }),
                    Feed("first", FeedRole.Fill, "desk/aux/4", "box/out/4") with
                    {
                        Set = "low",
                    },
                ])
        ),
        ["stream that could be spared"] = (
            new StreamPoorlyFilled(),
            3,
            3,
            faulty =>
                Boxes("a")
                    .WithProfile(
                        "desk",
                        profile =>
                            profile with
                            {
                                FactoryRoutes = [],
                                PortGroups = [.. profile.PortGroups.Select(group => group.Id.Value == "transmit" ? group with { Count = 40 } : group)],
                                Limits = new() { StreamsSent = 2 },
                            }
                    )
                    .With([
                        Stream("s0", "desk/transmit/1-8", "a/receive/1-8"),
                        .. faulty.Order().Select(n => Stream($"s{n}", $"desk/transmit/{(8 * n) + 1}-{(8 * n) + 4}", "a/receive/1-4")),
                    ])
                    .With([Route("desk/aux/1-4", "desk/transmit/1-4"), .. faulty.Order().Select(n => Route($"desk/aux/{n}", $"desk/transmit/{(8 * n) + 1}"))])
        ),
        ["missing device named again"] = (
            new ReferenceUnknown(),
            4,
            4,
            faulty => LineRig.Show().With([.. faulty.Order().Select(n => Route($"gone/aux/{n}", $"desk/transmit/{n}"))])
        ),
        ["missing point named again"] = (
            new PointOutOfRange(),
            4,
            4,
            faulty => LineRig.Show().With([.. faulty.Order().Select(n => Route("desk/aux/99", $"desk/transmit/{n}"))])
        ),
        ["profile that contradicts itself once more"] = (
            new ProfileUnsound(),
            3,
            3,
            faulty =>
                Of(
                    (
                        "desk",
                        SmallProfiles.Console with
                        {
                            Through =
                            [
                                .. faulty
                                    .Order()
                                    .Select(n => new ThroughEntry
                                    {
                                        Kind = ThroughKind.Process,
                                        From = new("in"),
                                        To = new($"nowhere{n}"),
                                    }),
                            ],
                        }
                    )
                )
        ),
    };
}
