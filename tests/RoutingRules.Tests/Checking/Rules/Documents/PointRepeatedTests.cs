using RoutingRules.Assignment;
using RoutingRules.Checking.Rules.Documents;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Tests.Checking.Rules.Lines;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Documents;

public sealed class PointRepeatedTests
{
    private static readonly PointRepeated Rule = new();

    private static Show Twice => LineRig.Show(Line("kick", "box/in/1", "desk/channel/1", "mon/channel/1", "desk/channel/1"));

    [Fact]
    public void A_channel_named_twice_is_told_at_the_second_entry() =>
        Expect.One(
            Rule,
            Twice,
            Severity.Warning,
            "/lines/0/to/2",
            "Line 'kick' names desk/channel/1 twice; the second entry counts for nothing.",
            "line=kick",
            "sink=desk/channel/1"
        );

    [Fact]
    public void An_input_named_twice_is_told_at_the_second_entry() =>
        Expect.One(
            Rule,
            LineRig.Show(Line("kick", "box/in/1", "desk/channel/1") with { From = new() { At = [At("box/in/1"), At("box/in/1")] } }),
            Severity.Warning,
            "/lines/0/from/at/1",
            "Line 'kick' names box/in/1 twice; the second entry counts for nothing.",
            "line=kick",
            "input=box/in/1"
        );

    [Fact]
    public void Pairs_that_overlap_are_an_error() =>
        Expect.One(
            Rule,
            LineRig.Show(Line("keys", "box/in/1-2", "desk/channel/5-6", "desk/channel/6-7")),
            Severity.Error,
            "/lines/0/to/1",
            "Line 'keys' names desk/channel/6 in two entries, desk/channel/5-6 and desk/channel/6-7: it cannot be two channels of one line at once.",
            "line=keys",
            "sink=desk/channel/6"
        );

    [Fact]
    public void Different_points_are_fine_and_other_lines_are_another_matter()
    {
        Expect.None(Rule, LineRig.Show(Line("a", "box/in/1", "desk/channel/1", "desk/channel/2"), Line("b", "box/in/1", "desk/channel/1")));
        Expect.None(Rule, LineRig.Show(Line("keys", "box/in/1-2", "desk/channel/5-6", "desk/channel/7-8")));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Assigning_counts_it_once(bool isInput)
    {
        var show = isInput ? LineRig.Show(Line("kick", "box/in/1", "desk/channel/1") with { From = new() { At = [At("box/in/1"), At("box/in/1")] } }) : Twice;
        var result = AssignCases.Assign(show, new AssignmentOptions());

        Assert.Empty(result.Unplaced);
        Assert.Equal(0, result.Objective!.Values.Take(4).Sum());
        Assert.Null(AssignCases.Verdict(show, result, new AssignmentOptions()));
        Assert.Equal(show.Lines, result.Show.Lines);
    }

    [Fact]
    public void A_line_without_a_place_counts_each_of_its_channels_once()
    {
        var show = Twice with { Rig = Twice.Rig with { Unavailable = [] }, Lines = [Twice.Lines[0] with { From = new() { Devices = [new("amp")] } }] };
        var result = AssignCases.Assign(show, new AssignmentOptions());

        Assert.Single(result.Unplaced);
        Assert.Equal(2, result.Objective!.Values.Take(4).Sum());
        Assert.Null(AssignCases.Verdict(show, result, new AssignmentOptions()));
    }
}
