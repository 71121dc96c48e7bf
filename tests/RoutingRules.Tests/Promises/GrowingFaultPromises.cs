using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Rules;
using RoutingRules.Tests.Rules.Network;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Promises;

/// <summary>
/// One more fault of a kind that a show has already is never taken for the known one: whatever the first faults are, the show with one more has a
/// finding of the rule with an identity that the show without it had not.
/// </summary>
public sealed class GrowingFaultPromises
{
    /// <summary>For each kind the rule, how many places can have the fault, how many may have it at once, and the show in which some have it.</summary>
    private static readonly Dictionary<string, (Rule Rule, int Places, int AtOnce, Func<HashSet<int>, Show> Show)> Kinds = new(StringComparer.Ordinal)
    {
        ["phantom power unsaid"] = (new PhantomMissing(), 4, 4, faulty => LineRig.Show([.. Numbers(4).Select(Microphone)])
            .Inputs([LineRig.Phantom("box/in/5", true), .. Numbers(4).Where(n => !faulty.Contains(n)).Select(n => LineRig.Phantom($"box/in/{n}", true))])),
        ["phantom power off"] = (new PhantomMissing(), 4, 4, faulty => LineRig.Show([.. Numbers(4).Select(Microphone)])
            .Inputs([.. Numbers(4).Select(n => LineRig.Phantom($"box/in/{n}", !faulty.Contains(n)))])),
        ["phantom power fed twice"] = (new PhantomFedTwice(), 2, 2, faulty => LineRig.Show(
            Line("pair", "box/in/1-2", "desk/channel/1-2") with { From = new() { At = [At("box/in/1-2"), At("mon/in/1-2")] } })
            .Inputs([LineRig.Phantom("mon/in/1-2", true), .. Numbers(2).Select(n => LineRig.Phantom($"box/in/{n}", faulty.Contains(n)))])),
        ["gain without an owner"] = (new GainOwnerMissing(), 4, 4, faulty => LineRig.Show([.. Numbers(4).Select(n => Line($"l{n}", $"box/in/{n}", $"desk/channel/{n}", $"mon/channel/{n}"))])
            .Inputs([.. Numbers(4).Where(n => !faulty.Contains(n)).Select(n => LineRig.Gain($"box/in/{n}", "desk", "mon"))])),
        ["line on a second channel"] = (new LineOnTwoChannels(), 4, 4, faulty => LineRig.Show(Line("vox", "box/in/1", "desk/channel/1"))
            .With([.. faulty.Select(n => Route("desk/receive/1", $"desk/channel/{n + 4}"))])),
        ["line not at a channel"] = (new LineNotPatched(), 4, 4, faulty => LineRig.Show(Line("vox", "box/in/1", [.. Numbers(4).Select(n => $"desk/channel/{n + 4}")]))
            .With([.. Numbers(4).Select(n => Route(faulty.Contains(n) ? null : "desk/receive/1", $"desk/channel/{n + 4}"))])),
        ["feed lost at one of its places"] = (new FanOutLost(), 4, 3, faulty => Sent(Numbers(4).Where(n => !faulty.Contains(n)))),
        ["late feeds"] = (new LatencyExceeded(), 4, 4, faulty => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box))
            .WithProfile("box", profile => profile with { LatencyMilliseconds = [new() { Group = new("out"), Value = 12 }] })
            .With(Stream("s", "desk/transmit/1-4", "box/receive/1-4")) with
        { Feeds = [.. faulty.Order().Select(LabelRig.Mix)] }),
        ["label missing"] = (new LabelMissing(), 8, 3, faulty => Sent(Numbers(8), 8) with
        {
            Feeds = [.. Numbers(8).Select(LabelRig.Mix)],
            Patch = Sent(Numbers(8), 8).Patch with { Labels = [.. Numbers(8).Where(n => !faulty.Contains(n)).Select(n => LabelRig.Label($"box/out/{n}", $"MIX {n}"))] },
        }),
        ["idle cables"] = (new OutputOrphaned(), 4, 4, faulty => LineRig.Show().Cables([.. faulty.Order().Select(n => Cable($"box/out/{n}", $"amp/in/{n}"))])),
        ["outputs left as from the factory"] = (new OutputStray(), 2, 2, faulty => Of(("desk", SmallProfiles.Console))
            .WithProfile("desk", profile => profile with
            {
                PortGroups = [.. profile.PortGroups.Select(group => group.Id.Value is "main" or "out" ? group with { Count = 3 } : group)],
                FactoryRoutes = [SmallProfiles.Factory("main", 1, 3, "out", 1)],
            }) with
        {
            Feeds = [.. Numbers(3).Where(n => !faulty.Contains(n)).Select(n => Feed($"m{n}", FeedRole.Utility, $"desk/main/{n}", $"desk/out/{n}"))],
        }),
        ["nothing to take over"] = (new SpareMissing(), 2, 2, faulty => Of(("desk", SmallProfiles.Console)) with
        {
            Feeds = [.. Numbers(2).Select(n => Feed($"m{n}", faulty.Contains(n) ? FeedRole.Main : FeedRole.Utility, $"desk/main/{n}", $"desk/out/{n}"))],
        }),
        ["stream beyond the limit"] = (new StreamLimitExceeded(), 4, 4, faulty => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("two", SmallProfiles.Box))
            .WithProfile("desk", profile => profile with
            {
                PortGroups = [.. profile.PortGroups.Select(group => group.Id.Value == "transmit" ? group with { Count = 20 } : group)],
                Limits = new() { StreamsSent = 1 },
            })
            .With([Stream("s0", "desk/transmit/17-20", "two/receive/1-4"), .. faulty.Order().Select(n => Stream($"s{n}", $"desk/transmit/{(4 * n) - 3}-{4 * n}", "box/receive/1-4"))])),
    };

    public static TheoryData<string> Names => new(Kinds.Keys);

    [Theory]
    [MemberData(nameof(Names))]
    public void One_more_fault_has_an_identity_of_its_own(string kind)
    {
        var (rule, places, atOnce, show) = Kinds[kind];
        foreach (var before in Subsets(places))
        {
            var known = Identities(rule, show(before));
            Assert.Equal(before.Count > 0, known.Count > 0);
            for (var place = 1; place <= places && before.Count < atOnce; place++)
            {
                if (!before.Contains(place))
                {
                    var now = Identities(rule, show([.. before, place]));
                    Assert.True(now.Except(known).Any(), $"{rule.Descriptor.Id}: a fault at {place} beside {string.Join(", ", before)} is taken for a known one");
                }
            }
        }

        IEnumerable<HashSet<int>> Subsets(int count) =>
            Enumerable.Range(0, 1 << count).Select(bits => Numbers(count).Where(n => (bits >> (n - 1) & 1) != 0).ToHashSet()).Where(set => set.Count <= atOnce);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void What_is_left_of_several_faults_is_part_of_what_was_found(string kind)
    {
        var (rule, _, _, show) = Kinds[kind];
        var all = RuleTester.Findings(rule, show([1, 2]));
        foreach (var left in RuleTester.Findings(rule, show([2])))
        {
            Assert.Contains(all, left.IsPartOf);
        }

        Assert.DoesNotContain(RuleTester.Findings(rule, show([1, 2])), more => RuleTester.Findings(rule, show([2])).Any(more.IsPartOf));
    }

    private static IEnumerable<int> Numbers(int count) => Enumerable.Range(1, count);

    private static Line Microphone(int number) => Line($"l{number}", $"box/in/{number}", $"desk/channel/{number}").Needs(PhantomNeed.Required);

    private static HashSet<string> Identities(Rule rule, Show show) => [.. RuleTester.Findings(rule, show).Select(finding => finding.Fingerprint())];

    /// <summary>A box whose outputs get what the console has at the slots of the same numbers; one feed wants the first bus at four of them.</summary>
    private static Show Sent(IEnumerable<int> served, int buses = 1) => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box))
        .With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"), Stream("s2", "desk/transmit/5-8", "box/receive/5-8"))
        .With([.. Enumerable.Range(1, 8).Select(n => Route(served.Contains(n) ? $"desk/aux/{(buses == 1 ? 1 : n)}" : null, $"desk/transmit/{n}"))]) with
    {
        Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/1", [.. Enumerable.Range(1, 4).Select(n => $"box/out/{n}")])],
    };
}
