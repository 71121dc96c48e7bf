using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Documents;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment;

public class TinyInstancesTests
{
    [Property(MaxTest = 60)]
    public Property Tiny_shows_are_documents_that_can_be_written_and_read() =>
        Prop.ForAll(
            TinyInstances.Arbitrary,
            tiny =>
            {
                var read = ShowReader.Read(ShowWriter.ToUtf8(tiny.Show));

                return read.IsUsable && read.Value == tiny.Show;
            }
        );

    [Property(MaxTest = 30)]
    public Property The_same_seed_makes_the_same_show() => Prop.ForAll(TinyInstances.Arbitrary, tiny => TinyInstances.Make(tiny.Seed) == tiny);

    [Fact]
    public void Tiny_shows_cover_the_problem()
    {
        var facts = Enumerable.Range(0, 300).Select(TinyInstances.Make).Select(tiny => new AssignmentFacts(tiny.Show, tiny.Options, _ => null)).ToList();
        var demands = facts.SelectMany(fact => fact.Demands).ToList();

        Assert.All(
            (int[])
                [
                    demands.Count(demand => demand.IsHeld),
                    demands.Count(demand => demand.Existing is not null && !demand.IsHeld),
                    demands.Count(demand => demand is { IsPinned: true, Feed: not null }),
                    demands.Count(demand => demand.Line is not null),
                    demands.Count(demand => demand.IsSplit),
                    demands.Count(demand => demand.Width == 2),
                    facts.Count(fact => fact.StayingStreams.Count > 0),
                    facts.Count(fact => fact.Rig.Rig.Links.Count > 0),
                    facts.Count(fact => fact.Options.Without.Count > 0),
                    facts.Count(fact => fact.Input.Feeds.Any(feed => !feed.SeparateFrom.IsEmpty)),
                ],
            count => Assert.InRange(count, 10, int.MaxValue)
        );
    }
}
