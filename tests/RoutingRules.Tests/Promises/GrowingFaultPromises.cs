using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;
using static RoutingRules.Tests.Promises.GrowingFaultShows;

namespace RoutingRules.Tests.Promises;

/// <summary>
/// One more fault of a kind that a show has already is never taken for the known one: whatever the first faults are, the show with one more has a
/// finding of the rule with an identity that the show without it had not.
/// </summary>
public sealed class GrowingFaultPromises
{
    public static TheoryData<string> Names => new(GrowingFaults.Kinds.Keys);

    [Theory]
    [MemberData(nameof(Names))]
    public void One_more_fault_has_an_identity_of_its_own(string kind)
    {
        var (rule, places, atOnce, show) = GrowingFaults.Kinds[kind];
        foreach (var before in Subsets(places))
        {
            var known = Identities(rule, show(before));
            Assert.Equal(before.Count > 0, known.Count > 0);
            for (var place = 1; place <= places && before.Count < atOnce; place++)
            {
                if (!before.Contains(place))
                {
                    var now = Identities(rule, show([.. before, place]));
                    Assert.True(
                        now.Except(known).Any(),
                        $"{rule.Descriptor.Id}: a fault at {place} beside {string.Join(", ", before)} is taken for a known one"
                    );
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
        var (rule, _, _, show) = GrowingFaults.Kinds[kind];
        var all = RuleTester.Findings(rule, show([1, 2]));
        foreach (var left in RuleTester.Findings(rule, show([2])))
        {
            Assert.Contains(all, left.IsPartOf);
        }

        Assert.DoesNotContain(RuleTester.Findings(rule, show([1, 2])), more => RuleTester.Findings(rule, show([2])).Any(more.IsPartOf));
    }

    private static HashSet<string> Identities(Rule rule, Show show) => [.. RuleTester.Findings(rule, show).Select(finding => finding.Fingerprint())];

    /// <summary>
    /// What has no identity of its own. Of things with one id, and of spares that are lacking, the number is the identity. A feed that joins others at a
    /// box which had no spare already is no new fault: the box lacks as many as before.
    /// </summary>
    [Fact]
    public void Members_that_only_their_number_tells_apart_are_counted()
    {
        Assert.All([2, 3, 4], count => Assert.NotEmpty(Identities(new IdDuplicate(), Zones(count + 1)).Except(Identities(new IdDuplicate(), Zones(count)))));
        Assert.All([1, 2], count => Assert.NotEmpty(Spares(count + 1).Except(Spares(count))));
        Assert.Equal(Spares(3), Spares(4));

        static Show Zones(int count) =>
            Of(("desk", SmallProfiles.Console)) is var show
                ? show with
                {
                    Rig = show.Rig with { Zones = [.. Numbers(count).Select(_ => new Zone { Id = new("stage") })] },
                }
                : null!;

        // Of eight outputs five are reserved; each of the first three feeds takes a free one, the fourth stands on a reserved one.
        static HashSet<string> Spares(int feeds) =>
            [
                .. Set(
                        new SparesTooFew(),
                        Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)).With(Stream("s", "desk/transmit/1-4", "box/receive/1-4")) is var show
                            ? show with
                            {
                                Rig = show.Rig with { Reserved = [new() { At = At("box/out/4-8") }] },
                                Feeds = [.. Numbers(feeds).Select(n => Feed($"f{n}", FeedRole.Monitor, $"desk/aux/{n}", $"box/out/{n}"))],
                            }
                            : null!,
                        "minimumOutputs",
                        3
                    )
                    .Select(finding => finding.Fingerprint()),
            ];
    }
}
