using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment;

[Trait("Speed", "slow")]
public class VariedInstancesTests
{
    private const int SeedsPerChunk = 60;

    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Varied_shows_come_out_as_well_as_anything_can(int chunk)
    {
        var wrong = Enumerable
            .Range(chunk * SeedsPerChunk, SeedsPerChunk)
            .Select(VariedInstances.Make)
            .SelectMany(tiny => TinyAgreement.Wrong(Engine, tiny))
            .ToList();

        Assert.True(wrong.Count == 0, string.Join(Environment.NewLine, wrong));
    }

    // Talkback that finds no place but travels in a stream that stays, and talkback left in a slot for the sake of a receiver nobody asks about.
    [Theory]
    [InlineData(7783)]
    [InlineData(9832)]
    public void What_nobody_placed_is_kept_away_from_loudspeakers_as_well(int seed) => Assert.Empty(TinyAgreement.Wrong(Engine, VariedInstances.Make(seed)));

    // Two that must not share supplies on one device that names none, where one device saves blocks.
    [Theory]
    [InlineData(16257)]
    [InlineData(17546)]
    public void What_must_not_share_supplies_may_share_a_device_that_names_none(int seed) =>
        Assert.Empty(TinyAgreement.Wrong(Engine, VariedInstances.Make(seed)));

    [Fact]
    public void A_line_that_stays_may_come_over_its_other_leg_where_that_saves_a_block() =>
        Assert.Empty(TinyAgreement.Wrong(Engine, VariedInstances.Make(8823)));

    [Fact]
    public void Where_two_slots_carry_a_bus_a_feed_that_stays_keeps_the_one_it_had() => Assert.Empty(TinyAgreement.Wrong(Engine, VariedInstances.Make(12712)));

    // A block that takes a stream that stays would sound at idle or reserved outputs what they sounded before from another stream.
    [Theory]
    [InlineData(11764)]
    [InlineData(15354)]
    [InlineData(18422)]
    [InlineData(31604)]
    [InlineData(39831)]
    public void What_sounds_from_a_stream_that_stays_is_a_stray_where_nobody_took_it_before(int seed) =>
        Assert.Empty(TinyAgreement.Wrong(Engine, VariedInstances.Make(seed)));

    [Fact]
    public void Feeds_that_must_not_share_links_come_out_as_well_as_anything_can()
    {
        var shows = Enumerable.Range(0, 300).Select(TinyInstances.Make).Where(tiny => !tiny.Show.Rig.Links.IsEmpty && tiny.Show.Feeds.Count > 1).ToList();
        var apart = shows.ConvertAll(tiny => Separated(tiny, [new() { Feed = tiny.Show.Feeds[0].Id, By = SeparationBy.Link }]));

        Assert.Equal([], apart.SelectMany(tiny => TinyAgreement.Wrong(Engine, tiny)));
        Assert.InRange(
            apart.Count(tiny => Engine.Assign(tiny.Show, tiny.Options).Objective != Engine.Assign(Separated(tiny, []).Show, tiny.Options).Objective),
            10,
            300
        );
    }

    // A stream that stays has a receiver behind a box that is out of use; on its way to the others it shares links all the same.
    [Fact]
    public void A_receiver_that_is_not_reached_makes_no_feed_separate() => Assert.Empty(TinyAgreement.Wrong(Engine, VariedInstances.Make(701720)));

    private static TinyInstance Separated(TinyInstance tiny, ValueList<Separation> from) =>
        tiny with
        {
            Show = tiny.Show with { Feeds = [.. tiny.Show.Feeds.Select((feed, i) => feed with { SeparateFrom = i > 0 ? from : [] })] },
        };

    [Fact]
    public void Varied_shows_cover_what_they_are_for()
    {
        var facts = Enumerable.Range(0, 300).Select(VariedInstances.Make).Select(tiny => new AssignmentFacts(tiny.Show, tiny.Options, _ => null)).ToList();
        var shows = facts.Select(fact => fact.Input).ToList();

        Assert.All(
            (int[])
                [
                    shows.Count(show =>
                        show.Rig.Cables.Any(cable => show.Rig.Cables.Any(other => other.From == cable.From && other.To.Device != cable.To.Device))
                    ),
                    shows.Count(show => show.Rig.Networks.Count > 1),
                    facts.Count(fact =>
                        fact.Demands.Any(PrivacyFacts.IsPrivate)
                        && fact.Rig.Devices.Any(device => device.Groups.Any(group => group.Kind == PortKind.Receive && fact.Privacy.Plays(group.At(1))))
                    ),
                    shows.Count(show => show.Lines.Any(line => line.To.Any(sink => sink.Group.Value == "out"))),
                    shows.Count(show => show.Lines.Any(line => line.To.Any(sink => sink.Group.Value is "transmit" or "receive"))),
                    facts.Count(fact =>
                        fact.Demands.Any(demand =>
                            demand is { IsPinned: true, Feed: not null, Runs.Count: 1 }
                            && fact.Before.Source(demand.Runs[0][0]) is { } source
                            && source != demand.Feed.Source[0]
                        )
                    ),
                    shows.Count(show => show.Rig.Devices.Any(device => device.Id.Value == "ring-1")),
                ],
            count => Assert.InRange(count, 5, int.MaxValue)
        );
    }
}
