using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Profiles.Generic;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Examples;

/// <summary>What the rules say about the published example shows: nothing, notes included, but for the twenty-two mistakes.</summary>
public sealed class ExampleFindingsTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().AddProfiles(new GenericProfiles()).Build();

    [Theory]
    [InlineData("01-smallest.show.json")]
    [InlineData("02-club-night.show.json")]
    [InlineData("festival-by-hand.show.json")]
    public void A_complete_example_is_clean(string name) => Assert.Empty(Said(Engine.Check(Read(name))));

    [Theory]
    [InlineData("03-two-boxes.show.json")]
    [InlineData("04-festival.show.json")]
    public void An_example_for_assignment_is_placed_whole_and_clean_afterwards(string name)
    {
        var result = Engine.Assign(Read(name));

        Assert.Empty(result.Unplaced.Select(demand => demand.ToString()));
        Assert.Equal(Engine.Resolve(result.Show).Demands.Count, result.Placements.Count);
        Assert.Empty(Said(result.Check));
        Assert.Empty(Said(Engine.Check(ShowReader.Read(ShowWriter.ToUtf8(result.Show)).Value!)));
    }

    [Theory]
    [InlineData("03-two-boxes.show.json", "desk/out/1-2")]
    [InlineData("04-festival.show.json", "desk-h/out/13-14", "desk-h/aes-out/7-8", "desk-m/out/13-14", "desk-m/aes-out/7-8")]
    public void What_an_example_clears_stays_cleared(string name, params string[] cleared)
    {
        var graph = Engine.Resolve(Engine.Assign(Read(name)).Show).Graph;

        Assert.All(
            cleared.Select(PointRange.Parse),
            at => Assert.All([at[0], at[1]], point => Assert.True(graph.Origin(graph.Find(point)).IsNone, $"{point} sounds"))
        );
    }

    [Fact]
    public void The_festival_with_mistakes_has_exactly_the_twenty_two_in_the_list()
    {
        // Written down from the list beside the examples.
        string[] expected =
        [
            "RR1101 error /rig/cables/3/to",
            "RR1104 error /patch/routes/47",
            "RR2001 error /patch/routes/52",
            "RR2009 warning /patch/routes/76",
            "RR3001 error /feeds/21/to/0",
            "RR3003 error /feeds/2/to/1",
            "RR3004 error /lines/8/to/1",
            "RR3008 warning /feeds/3/to/0",
            "RR4001 error /patch/streams/17/to/0/at",
            "RR4007 error /patch/streams/2/from",
            "RR5005 error /rig/links/8",
            "RR5009 warning /rig/clocks/0",
            "RR6001 error /lines/32/to/0",
            "RR6003 error /patch/inputs/1",
            "RR6004 error /patch/inputs/17",
            "RR6006 warning /rig/devices/5",
            "RR6009 error /rig/cables/6",
            "RR7003 note /patch/labels/246/text",
            "RR7005 warning /patch/labels/195/text",
            "RR8001 warning /rig/devices/5",
            "RR9001 error /feeds/16/limiter",
            "RR9002 error /feeds/30/to",
        ];
        var show = Read("05-festival-mistakes.show.json");

        Assert.Equal(
            expected,
            Engine.Check(show).Findings.Select(finding => $"{finding.Rule} {finding.Severity.ToString().ToLowerInvariant()} {finding.Pointer}")
        );

        // The numbers in the pointers are these places.
        Assert.Equal("proc-s/out/1-2", show.Rig.Cables[3].From.ToString());
        Assert.Equal("desk-m/channel/25-27", show.Patch.Routes[47].To.ToString());
        Assert.Equal("desk-m/channel/36", show.Patch.Routes[52].To.ToString());
        Assert.Equal("box-c/out/1-6", show.Patch.Routes[76].To.ToString());
        Assert.Equal("w-guitar", show.Feeds[21].Id.Value);
        Assert.Equal("sub", show.Feeds[2].Id.Value);
        Assert.Equal("overheads", show.Lines[8].Id.Value);
        Assert.Equal("outfill-l", show.Feeds[3].Id.Value);
        Assert.Equal("wireless-rec", show.Patch.Streams[17].Id.Value);
        Assert.Equal("bar", show.Patch.Streams[2].Id.Value);
        Assert.Equal("bar-run", show.Rig.Links[8].Id.Value);
        Assert.Equal("c1", show.Rig.Clocks[0].Id.Value);
        Assert.Equal("voice-drums", show.Lines[32].Id.Value);
        Assert.Equal("box-r/in/1", show.Patch.Inputs[1].At.ToString());
        Assert.Equal("box-c/in/21-22", show.Patch.Inputs[17].At.ToString());
        Assert.Equal("box-m", show.Rig.Devices[5].Id.Value);
        Assert.Equal("amp-d/out/3", show.Rig.Cables[6].From.ToString());
        Assert.Equal("ears/in/15", show.Patch.Labels[246].At.ToString());
        Assert.Equal("box-c/out/5", show.Patch.Labels[195].At.ToString());
        Assert.Equal("ears-5", show.Feeds[16].Id.Value);
        Assert.Equal("shaker-2", show.Feeds[30].Id.Value);
    }

    [Fact]
    public void Every_family_of_rules_has_something_to_say_about_the_festival_with_mistakes()
    {
        var found = Engine.Check(Read("05-festival-mistakes.show.json")).Findings.Select(finding => finding.Rule).ToHashSet(StringComparer.Ordinal);

        var families = Engine.Rules.Select(rule => rule.Descriptor).Where(rule => found.Contains(rule.Id)).Select(rule => rule.Family).Distinct().Order();
        Assert.Equal(Enum.GetValues<RuleFamily>(), families);
        Assert.Equal(Enumerable.Range(1, 9).Select(number => $"RR{number}"), found.Select(rule => rule[..3]).Distinct().Order(StringComparer.Ordinal));
    }

    private static IEnumerable<string> Said(CheckResult result) =>
        result.Findings.Select(finding => finding.ToString()).Concat(result.Undecided.Select(undecided => undecided.ToString()));

    private static Show Read(string name) => ShowReader.ReadFile(Path.Combine(AppContext.BaseDirectory, "examples", name)).Value!;
}
