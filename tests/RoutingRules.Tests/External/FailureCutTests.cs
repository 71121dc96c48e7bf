using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using QuikGraph;
using QuikGraph.Algorithms.ConnectedComponents;
using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Losses;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;

namespace RoutingRules.Tests.External;

/// <summary>
/// Which links and devices silence a feed, alone and in pairs, against the connected components that a general graph library (QuikGraph 2.5) finds without
/// them.
/// </summary>
public sealed class FailureCutTests
{
    private static readonly DeviceProfile Console = Wide(SmallProfiles.Console, "made/console");
    private static readonly DeviceProfile Box = Wide(SmallProfiles.FreeBox, "made/box");

    [Property(MaxTest = 200)]
    public Property A_feed_is_lost_exactly_when_the_network_parts_its_ends() =>
        Promise.Of(
            Shows(),
            show =>
            {
                var things = show.Rig.Devices.Select(device => device.Id.Value).Concat(show.Rig.Links.Select(link => link.Id.Value)).ToList();
                if (!AreJoined(show, []))
                {
                    return Promise.Engine.Impact(show, Options).NotArriving.SequenceEqual(["main/1"]) ? null : "It does not arrive, and that is not said.";
                }

                var answer = Promise.Engine.Impact(show, Options);
                var single = things.Where(thing => !AreJoined(show, [thing])).ToList();
                var pairs = things
                    .SelectMany((one, i) => things.Skip(i + 1).Select(other => (One: one, Other: other)))
                    .Where(pair => !single.Contains(pair.One) && !single.Contains(pair.Other) && !AreJoined(show, [pair.One, pair.Other]))
                    .Select(pair => $"{pair.One}+{pair.Other}")
                    .ToList();
                var told = answer.Losses.Where(loss => !loss.Subjects.IsEmpty).Select(loss => loss.Lost[0].Id).Order(StringComparer.Ordinal).ToList();
                var toldPairs = answer.Pairs.Select(loss => $"{loss.Lost[0].Id}+{loss.Lost[1].Id}").Order(StringComparer.Ordinal).ToList();
                var sets = answer.FailureSets[0];
                var listed = sets.Sets.Select(set => string.Join('+', set.Select(thing => thing.Id))).ToList();
                return !told.SequenceEqual(single.Order(StringComparer.Ordinal)) ? $"Alone {string.Join(", ", single)}, told {string.Join(", ", told)}."
                    : !toldPairs.SequenceEqual(pairs.Order(StringComparer.Ordinal)) ? $"Pairs {string.Join(", ", pairs)}, told {string.Join(", ", toldPairs)}."
                    : listed.Count + sets.Omitted != single.Count + pairs.Count || listed.Except(single.Concat(pairs)).Any()
                        ? $"Sets {string.Join(", ", listed)}."
                    : null;
            }
        );

    private static ImpactOptions Options { get; } =
        new()
        {
            Recovery = false,
            Pairs = true,
            SetSize = 2,
            Kinds = [LossKind.Device, LossKind.Link],
        };

    private static DeviceProfile Wide(DeviceProfile profile, string id) =>
        profile with
        {
            Id = new(id),
            PortGroups = [.. profile.PortGroups.Where(group => group.Kind != PortKind.Network), SmallProfiles.Network(8)],
        };

    private static bool AreJoined(Show show, string[] lost)
    {
        if (lost.Contains("d0") || lost.Contains("d1"))
        {
            return false;
        }

        var graph = new UndirectedGraph<string, TaggedUndirectedEdge<string, string>>(true);
        graph.AddVertexRange(show.Rig.Devices.Select(device => device.Id.Value).Except(lost));
        foreach (var link in show.Rig.Links.Where(link => !lost.Contains(link.Id.Value)))
        {
            string[] ends = [link.From.Device.Value, link.To.Device.Value];
            Array.Sort(ends, StringComparer.Ordinal);
            if (ends.All(graph.ContainsVertex))
            {
                graph.AddEdge(new(ends[0], ends[1], link.Id.Value));
            }
        }

        var search = new ConnectedComponentsAlgorithm<string, TaggedUndirectedEdge<string, string>>(graph);
        search.Compute();
        return search.Components["d0"] == search.Components["d1"];
    }

    /// <summary>A console d0, a box d1 that plays a main of it, and others in between, joined by any links.</summary>
    private static Arbitrary<Show> Shows() =>
        Arb.From(from count in Gen.Choose(2, 6) from ends in Gen.Choose(0, 99).ArrayOf(20) from taken in Gen.Choose(1, 10) select Build(count, ends, taken));

    private static Show Build(int count, int[] ends, int taken)
    {
        var jacks = new int[count];
        var links = new List<Link>();
        for (var i = 0; i + 1 < ends.Length && links.Count < taken; i += 2)
        {
            var (one, other) = (ends[i] % count, ends[i + 1] % count);
            if (one != other && jacks[one] < 8 && jacks[other] < 8)
            {
                links.Add(
                    new Link
                    {
                        Id = new($"l{i}"),
                        Network = new("net"),
                        From = SmallShow.At($"d{one}/net/{++jacks[one]}"),
                        To = SmallShow.At($"d{other}/net/{++jacks[other]}"),
                    }
                );
            }
        }

        if (links.Count == 0)
        {
            links.Add(
                new Link
                {
                    Id = new("l"),
                    Network = new("net"),
                    From = SmallShow.At("d0/net/1"),
                    To = SmallShow.At("d1/net/1"),
                }
            );
        }

        var show = SmallShow.Of([.. Enumerable.Range(0, count).Select(i => ($"d{i}", i == 0 ? Console : Box))]);
        return (show with { Rig = show.Rig with { Links = links.ToValueList() }, Feeds = [SmallShow.Feed("main", FeedRole.Main, "d0/main/1", "d1/out/1")] })
            .With(SmallShow.Stream("s", "d0/transmit/1-4", "d1/receive/1-4"))
            .With(SmallShow.Route("d0/main/1", "d0/transmit/1"), SmallShow.Route("d1/receive/1", "d1/out/1"));
    }
}
