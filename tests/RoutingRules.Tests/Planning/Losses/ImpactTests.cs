using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.Answers;
using static RoutingRules.Tests.Planning.Losses.ImpactRig;

namespace RoutingRules.Tests.Planning.Losses;

/// <summary>Losses of a rig that fits on a hand: a console, two boxes in a row behind it, an amplifier on the first box.</summary>
public sealed class ImpactTests
{
    private static string Told(LossImpact loss) =>
        string.Join("; ", loss.Subjects.Select(subject => $"{subject.Subject} {subject.Fate} {string.Join(' ', subject.LostAt)}"));

    [Theory]
    [InlineData("desk", "ears Lost a/out/3; main Lost amp/in/1; wedges Lost a/out/4 b/out/4; spare Lost b/out/1; voice Lost desk/channel/1")]
    [InlineData("trunk", "ears Lost a/out/3; main Lost amp/in/1; wedges Lost a/out/4 b/out/4; spare Lost b/out/1; voice Lost desk/channel/1")]
    [InlineData("a", "ears Lost a/out/3; main Lost amp/in/1; wedges Lost a/out/4 b/out/4; spare Lost b/out/1; voice Lost desk/channel/1")]
    [InlineData("b", "wedges Partly b/out/4; spare Lost b/out/1")]
    [InlineData("cross", "wedges Partly b/out/4; spare Lost b/out/1")]
    [InlineData("amp", "main BackedUp amp/in/1")]
    [InlineData("a/out/1 to amp/in/1", "main BackedUp amp/in/1")]
    [InlineData("a/out/2 to amp/in/2", "")]
    [InlineData("loom at a", "main BackedUp amp/in/1")]
    [InlineData("stage", "ears Lost a/out/3; main Lost amp/in/1; wedges Lost a/out/4 b/out/4; spare Lost b/out/1; voice Lost desk/channel/1")]
    public void Each_loss_silences_what_a_person_would_say(string id, string told)
    {
        var loss = Loss(Ask(Stage, new ImpactOptions { Recovery = false }), id);

        // Of feeds with the same role and priority the first in the document comes first.
        Assert.Equal(told.Split("; ").Order(StringComparer.Ordinal), Told(loss).Split("; ").Order(StringComparer.Ordinal));
        Assert.True(!told.Contains("ears", StringComparison.Ordinal) || loss.Subjects[0].Subject == "ears");
        Assert.Equal(told.Contains("ears Lost", StringComparison.Ordinal), loss.IsSinglePoint);
    }

    [Fact]
    public void The_worst_comes_first_and_what_carries_on_is_counted()
    {
        var answer = Ask(Stage, new ImpactOptions { Recovery = false });

        Assert.Equal(["a", "desk", "stage", "trunk"], answer.Losses.Take(4).Select(loss => loss.Lost[0].Id).Order(StringComparer.Ordinal));
        Assert.Equal((2, 1), (Loss(answer, "b").FeedsKept, Loss(answer, "b").LinesKept));
        Assert.Equal(["spare"], Loss(answer, "amp").Subjects[0].Backups);
        Assert.Contains(Loss(answer, "desk").Remarks, remark => remark.Contains("nothing in the document takes over", StringComparison.Ordinal));
        Assert.Contains("a and amp go with it: they have no other supply.", Loss(answer, "stage").Remarks);
    }

    [Fact]
    public void Sets_name_each_thing_that_silences_a_feed_and_its_backup()
    {
        var main = Ask(Stage, new ImpactOptions { Recovery = false }).FailureSets[0];

        Assert.Equal("main", main.Feed);
        Assert.Equal(1, main.Smallest);
        Assert.Equal(["desk", "a", "trunk", "stage"], main.Sets.Where(set => set.Count == 1).Select(set => set[0].Id));

        // The main by box, cable, loom or amplifier, its spare by box or link: every other pair holds one of the four above.
        Assert.Equal(
            ["b+amp", "b+a/out/1 to amp/in/1", "b+loom at a", "amp+cross", "cross+a/out/1 to amp/in/1", "cross+loom at a"],
            main.Sets.Where(set => set.Count == 2).Select(set => string.Join('+', set.Select(thing => thing.Id)))
        );
    }

    [Fact]
    public void Pairs_silence_what_neither_does_alone()
    {
        var pairs = Ask(
            Stage,
            new ImpactOptions
            {
                Recovery = false,
                Pairs = true,
                SetSize = 0,
                Kinds = [LossKind.Device],
            }
        ).Pairs;

        var pair = Assert.Single(pairs);
        Assert.Equal(["b", "amp"], pair.Lost.Select(thing => thing.Id));
        Assert.Equal(LossFate.Lost, pair.Subjects[0].Fate);
    }

    [Fact]
    public void A_ring_carries_on_over_its_other_side()
    {
        var ring = Stage with { Rig = Stage.Rig with { Links = Stage.Rig.Links.Append(Link("ring", "desk/net/2", "b/net/2")).ToValueList() } };
        var trunk = Loss(Ask(ring, new ImpactOptions { Recovery = false }), "trunk");

        Assert.Empty(trunk.Subjects);
        Assert.Equal(["s1", "s2"], trunk.Rerouted);
        Assert.Contains(trunk.Remarks, remark => remark.Contains("no loop control", StringComparison.Ordinal));
    }

    [Fact]
    public void What_does_not_arrive_is_said_and_not_counted()
    {
        var answer = Ask(
            Stage with
            {
                Patch = Stage.Patch with { Routes = Stage.Patch.Routes.Where(route => route.To.ToString() != "desk/transmit/3").ToValueList() },
            },
            new ImpactOptions { Recovery = false }
        );

        Assert.Equal(["ears/1"], answer.NotArriving);
        Assert.DoesNotContain(answer.Losses, loss => loss.Subjects.Any(subject => subject.Subject == "ears"));
    }

    [Fact]
    public void Points_are_looked_at_on_request()
    {
        var answer = Ask(
            Stage,
            new ImpactOptions
            {
                Recovery = false,
                Kinds = [LossKind.Point],
                SetSize = 0,
            }
        );

        Assert.Equal(
            ["a/in/1", "a/out/1", "a/out/3", "a/out/4", "amp/in/1", "amp/out/1", "b/out/1", "b/out/4"],
            answer.Losses.Select(loss => loss.Lost[0].Id).Order(StringComparer.Ordinal)
        );
        Assert.Equal("main BackedUp amp/in/1", Told(Loss(answer, "a/out/1")));
    }

    [Theory]
    [InlineData("loom B 1-2", "loom B")]
    [InlineData("loom B 3", "loom B")]
    [InlineData("tower rack", "tower rack")]
    [InlineData("A12", "A12")]
    [InlineData("12", "12")]
    public void A_loom_is_a_way_without_its_numbers(string way, string loom) => Assert.Equal(loom, LossUnitList.LoomOf(way));

    [Theory]
    [InlineData(-1, 2)]
    [InlineData(8, 4)]
    [InlineData(8, -1)]
    public void Options_out_of_range_are_refused(int moves, int size) =>
        Assert.ThrowsAny<ArgumentException>(() => Ask(Stage, new ImpactOptions { Moves = moves, SetSize = size }));

    [Fact]
    public void Reports_carry_cautions_on_every_card_and_escape_names()
    {
        var named = Stage with
        {
            Title = "Ring <script>|*",
            Rig = Stage.Rig with { Links = Stage.Rig.Links.Append(Link("ring", "desk/net/2", "b/net/2")).ToValueList() },
        };
        var answer = Ask(named);
        var text = ImpactReport.Text(answer, named);
        var html = ImpactReport.Html(answer, named);
        var markdown = ImpactReport.Markdown(answer, named);

        // The overview; desk, a, b, amp, cross and ring; the supply that takes box and amplifier with it.
        var cards = text.Split("\nIf ").Length;
        Assert.Equal(cards, text.Split("Never lift a").Length - 1);
        Assert.Equal(cards, html.Split("<section>").Length - 1);
        Assert.Equal(1, html.Split("Never lift a protective earth").Length - 1);
        Assert.Equal(cards - 1, html.Split("Mute amplifiers before any change.").Length - 1);
        Assert.Equal(cards, markdown.Split("Never lift a protective earth").Length - 1);
        Assert.DoesNotContain("<script>", html, StringComparison.Ordinal);
        Assert.Contains("\\<script\\>\\|\\*", markdown, StringComparison.Ordinal);
        System.Xml.Linq.XDocument.Parse(html[html.IndexOf("<html", StringComparison.Ordinal)..]);
        Assert.Contains("Phantom ON once it is plugged, channel muted.", html, StringComparison.Ordinal);
        Assert.Contains("the cable to amp/in/1", html, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', text + html + markdown);
    }
}
