using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

public sealed class HopsExceededTests
{
    private static readonly HopsExceeded Rule = new();

    /// <summary>A chain of boxes behind the desk, the last of which receives.</summary>
    private static Show Chain(int hops)
    {
        var boxes = Enumerable.Range(1, hops).Select(number => $"b{number}").ToArray();
        return Boxes(boxes)
            .With([.. boxes.Select((box, position) => Link($"l{position + 1}", position == 0 ? "desk/net/1" : $"b{position}/net/2", $"{box}/net/1"))])
            .With(Stream("s", "desk/transmit/1-4", $"b{hops}/receive/1-4"));
    }

    // IEEE 802.1BA: the bound of 2 ms in class A holds for 7 hops.
    [Fact]
    public void The_eighth_hop_in_class_a_is_one_too_many()
    {
        Expect.None(Rule, Chain(7).With(Transport.AvtpClassA));
        Expect.One(
            Rule,
            Chain(8).With(Transport.AvtpClassA),
            Severity.Warning,
            "/patch/streams/0",
            "Stream 's' walks over 8 links from desk to b8 on network 'net', but class A allows 7.",
            "network=net",
            "stream=s",
            "way=desk to b8"
        );
    }

    // Class B promises 50 ms over 7 hops (IEEE 802.1BA, from memory).
    [Fact]
    public void So_is_it_in_class_b()
    {
        Expect.None(Rule, Chain(7).With(Transport.AvtpClassB));
        Assert.EndsWith(
            "but class B allows 7.",
            Assert.Single(RuleTester.Findings(Rule, Chain(8).With(Transport.AvtpClassB))).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Other_transports_have_no_such_limit() => Expect.None(Rule, Chain(9));

    [Fact]
    public void A_limit_of_either_device_counts_on_any_transport()
    {
        var limited = Chain(3).WithProfile("desk", profile => profile with { Limits = new() { Hops = 2 } });

        Assert.Equal(
            "Stream 's' walks over 3 links from desk to b3 on network 'net', but desk allows 2.",
            Assert.Single(RuleTester.Findings(Rule, limited)).Message
        );
        Assert.Single(RuleTester.Findings(Rule, Chain(3).WithProfile("b3", profile => profile with { Limits = new() { Hops = 2 } })));
        Expect.None(Rule, Chain(3).WithProfile("b2", profile => profile with { Limits = new() { Hops = 2 } }));
    }

    [Fact]
    public void Several_ways_too_long_are_one_finding_that_names_the_longest()
    {
        var show = Chain(10).With(Transport.AvtpClassA);
        show = show.With([
            .. show.Patch.Streams,
            Stream("t", "b10/transmit/1-4", "desk/receive/1-4"),
            Stream("u", "desk/transmit/5-8", "b9/receive/1-4", "b10/receive/5-8"),
        ]);

        Assert.Equal(
            "Stream 's' walks over 10 links from desk to b10 on network 'net', but class A allows 7. 3 paths on this network are too long; this is "
                + "the longest.",
            Assert.Single(RuleTester.Findings(Rule, show)).Message
        );
    }

    [Fact]
    public void The_limit_of_class_a_can_be_set() => Assert.Single(NetworkShow.Set(Rule, Chain(4).With(Transport.AvtpClassA), "maximumHops", 3));

    [Fact]
    public void A_shorter_way_round_counts() =>
        Expect.None(Rule, Chain(8).With(Transport.AvtpClassA) is var show ? show.With([.. show.Rig.Links, Link("short", "desk/net/2", "b8/net/2")]) : show);

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
