using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Tests.Documents;

public sealed class ShowReaderTests
{
    [Fact]
    public void Every_member_of_the_sample_arrives_where_it_belongs()
    {
        var show = Sample.Good(Sample.Show);

        var expected = new Show
        {
            SchemaVersion = 1,
            Title = "Tidewater Folk",
            Venue = "Old Ferry Yard",
            Date = new DateOnly(2027, 6, 12),
            Revision = "C",
            Rig = new Rig
            {
                Zones =
                [
                    new Zone
                    {
                        Id = new("stage-right"),
                        Side = ZoneSide.HouseLeft,
                        Walk = 1,
                        Near = [new("riser")],
                    },
                    new Zone { Id = new("riser") },
                ],
                Clocks =
                [
                    new Clock
                    {
                        Id = new("c1"),
                        SampleRate = 48000,
                        Leader = new("desk"),
                    },
                ],
                Networks =
                [
                    new Network
                    {
                        Id = new("audio"),
                        Transport = Transport.RtpL24,
                        PacketMicroseconds = 1000,
                        Clock = new Id<Clock>("c1"),
                    },
                ],
                Devices =
                [
                    new Device
                    {
                        Id = new("desk"),
                        Profile = new("generic/console-medium"),
                        Power = [new("ups-1")],
                    },
                    new Device
                    {
                        Id = new("box-r"),
                        Profile = new("generic/stage-box-medium"),
                        Zone = new Id<Zone>("stage-right"),
                        Label = "SR box",
                    },
                ],
                Links =
                [
                    new Link
                    {
                        Id = new("trunk"),
                        Network = new("audio"),
                        From = Points("desk", "net", 1, 1),
                        To = Points("box-r", "net", 1, 1),
                        Medium = Medium.CopperSolid,
                        LengthMetres = 70.5,
                        SpeedMbps = 1000,
                    },
                ],
                Cables =
                [
                    new Cable
                    {
                        From = Points("box-r", "out", 1, 2),
                        To = Points("amp-r", "in", 1, 2),
                        Way = "loom B 1-2",
                    },
                ],
                Unavailable =
                [
                    new UnavailablePoints
                    {
                        At = Points("box-r", "in", 7, 7),
                        Reason = "crackles",
                        Since = new DateOnly(2027, 6, 11),
                    },
                ],
                Reserved = [new ReservedPoints { At = Points("box-r", "out", 8, 8) }],
            },
            Feeds =
            [
                new Feed
                {
                    Id = new("main-l"),
                    Role = FeedRole.Main,
                    Set = "main",
                    Part = "left",
                    Source = Points("desk", "main", 1, 1),
                    To = [new Destination { Zones = [new("stage-right")] }],
                    Priority = Priority.Critical,
                },
                new Feed
                {
                    Id = new("ears-1"),
                    Role = FeedRole.InEar,
                    Source = Points("desk", "aux", 9, 10),
                    To = [new Destination { At = Points("box-r", "out", 3, 4) }],
                    Limiter = true,
                    SeparateFrom = [new Separation { Feed = new("main-l"), By = SeparationBy.Power }],
                },
            ],
            Lines =
            [
                new Line
                {
                    Id = new("keys"),
                    Kind = LineKind.Line,
                    Phantom = PhantomNeed.Forbidden,
                    Width = 2,
                    From = new LineOrigin { At = [Points("box-r", "in", 9, 10)] },
                    To = [Points("desk", "channel", 9, 10)],
                },
            ],
            Patch = new Patch
            {
                Streams =
                [
                    new AudioStream
                    {
                        Id = new("s1"),
                        Network = new("audio"),
                        From = Points("desk", "transmit", 1, 8),
                        To = [new StreamReceiver { At = Points("box-r", "receive", 1, 4), Channels = new NumberRange(1, 4) }],
                    },
                ],
                Routes =
                [
                    new Route { From = Points("desk", "matrix", 1, 1), To = Points("desk", "transmit", 5, 5) },
                    new Route { From = null, To = Points("desk", "transmit", 4, 4) },
                ],
                Inputs =
                [
                    new InputSettings
                    {
                        At = Points("box-r", "in", 9, 10),
                        Phantom = false,
                        GainOwner = new Id<Device>("desk"),
                    },
                ],
                Labels = [new PointLabel { At = Points("desk", "channel", 9, 9), Text = "KEYS" }],
            },
            Extensions = new ExtensionData { Json = """{ "x-planner": { "colour": [ 1, 2 ] } }""" },
        };
        Assert.Equal(expected, show);
    }

    [Fact]
    public void What_is_absent_is_empty_or_has_its_default()
    {
        var show = Sample.Good("""{"schemaVersion":1,"title":"t","rig":{}}""");

        Assert.Equal(new Show { Title = "t", Rig = new Rig() }, show);
        Assert.True(show.Feeds.IsEmpty);
        Assert.Equal(new Patch(), show.Patch);
    }

    [Fact]
    public void Members_may_come_in_any_order()
    {
        var show = Sample.Good("""{"rig":{"zones":[{"walk":2,"id":"a"}],"devices":[]},"title":"t","schemaVersion":1}""");

        Assert.Equal(
            new Show
            {
                Title = "t",
                Rig = new Rig { Zones = [new Zone { Id = new("a"), Walk = 2 }] },
            },
            show
        );
    }

    [Fact]
    public void Escaped_names_and_texts_are_the_same_as_plain_ones()
    {
        var show = Sample.Good(
            """{"schema\u0056ersion":1,"title":"\u0041 \"B\" \ud83c\udfa4","rig":{"devices":[{"id":"d\u0065sk","profile":"generic\/x"}]}}"""
        );

        Assert.Equal("A \"B\" \U0001F3A4", show.Title);
        Assert.Equal("desk", show.Rig.Devices[0].Id.Value);
        Assert.Equal("generic/x", show.Rig.Devices[0].Profile.Value);
    }

    [Fact]
    public void A_byte_order_mark_is_passed_over()
    {
        var read = RoutingRules.Documents.ShowReader.Read([0xEF, 0xBB, 0xBF, .. System.Text.Encoding.UTF8.GetBytes(Sample.Show)]);

        Assert.Equal(Sample.Good(Sample.Show), read.Value);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(33)]
    [InlineData(1000)]
    public void Lists_of_any_length_keep_their_order(int count)
    {
        var zones = string.Join(",", Enumerable.Range(1, count).Select(i => $$"""{"id":"z{{i}}"}"""));

        var show = Sample.Good(Sample.WithRig($$"""{"zones":[{{zones}}]}"""));

        Assert.Equal(Enumerable.Range(1, count).Select(i => $"z{i}"), show.Rig.Zones.Select(zone => zone.Id.Value));
    }

    [Fact]
    public void Equal_ids_are_one_string_and_different_ids_stay_apart()
    {
        var zones = string.Join(",", Enumerable.Range(1, 3000).Select(i => $$"""{"id":"zone-{{i}}","near":["zone-{{i}}"]}"""));

        var show = Sample.Good(Sample.WithRig($$"""{"zones":[{{zones}}]}"""));

        Assert.Equal(3000, show.Rig.Zones.Select(zone => zone.Id).Distinct().Count());
        Assert.All(show.Rig.Zones, zone => Assert.Equal(zone.Id, zone.Near[0]));
        Assert.Same(show.Rig.Zones[0].Id.Value, show.Rig.Zones[0].Near[0].Value);
    }

    private static PointRange Points(string device, string group, int first, int last) => new(new Id<Device>(device), new Id<PortGroup>(group), first, last);
}
