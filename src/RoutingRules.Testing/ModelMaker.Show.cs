using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Testing;

/// <content>Shows and configurations.</content>
internal sealed partial class ModelMaker
{
    public Show Show() =>
        new()
        {
            Title = FilledText(),
            Venue = Maybe(Text),
            Date = MaybeValue(Date),
            Revision = Maybe(Text),
            Rig = Rig(),
            Feeds = List(Feed),
            Lines = List(Line),
            Patch = Flip() ? Patch() : new Patch(),
            Waivers = Flip() ? List(() => Waiver() with { Scope = default }) : default,
            Extensions = Extensions(),
        };

    public EngineConfig Config() =>
        new()
        {
            FailOn = Enum<Severity>(),
            Extends = List(FilledText),
            Rules = List(() =>
                new RuleSetting
                {
                    Rule = Flip() ? Name() : Name() + "*",
                    Enabled = MaybeValue(Flip),
                    Severity = MaybeValue(Enum<Severity>),
                    Options = List(() => new RuleOptionValue { Name = Name(), Value = Number(0, 99_999) / 8.0 }),
                }
            ),
            Assignment = Flip()
                ? new AssignmentConfig()
                : new AssignmentConfig
                {
                    Spares = Number(0, 65_535),
                    Headroom = Number(0, 65_535),
                    LatencyMilliseconds = MaybeValue(() => Number(1, 8_000) / 8.0),
                    InEarLatencyMilliseconds = MaybeValue(() => Number(1, 8_000) / 8.0),
                    Order = Flip() ? default : Order(),
                    KeepUnlisted = Flip(),
                    Strategy = Maybe(Name),
                    Budget = MaybeValue(() => random.NextInt64(1, 1L << 53)),
                },
            Lists = Flip()
                ? new ListsConfig()
                : new ListsConfig
                {
                    Separator = MaybeValue(Enum<ListSeparator>),
                    Feeds = ListOf(["id", "name", "separateFrom", "to", "limiter"]),
                    Lines = ListOf(["id", "kind", "from", "suppliedBy"]),
                },
            Extensions = Extensions(),
        };

    private ListConfig ListOf(string[] members) =>
        new()
        {
            Columns = List(() => new ListColumn { Header = FilledText(), Member = Pick(members) }),
            Ignore = List(FilledText),
            Words = List(() =>
                new ListWord
                {
                    Member = Pick(members),
                    Cell = FilledText(),
                    Value = Text(),
                }
            ),
        };

    private ValueList<AssignmentAim> Order()
    {
        var order = System.Enum.GetValues<AssignmentAim>();
        random.Shuffle(order);
        return order.ToValueList();
    }

    private Feed Feed() =>
        new()
        {
            Id = Id<Feed>(),
            Name = Maybe(Text),
            Role = new FeedRole(Word()),
            Set = Maybe(FilledText),
            Part = Maybe(FilledText),
            Source = Points(),
            To = List(Destination, min: 1),
            Priority = Enum<Priority>(),
            Preferred = MaybeValue(() => Number(1, 99_999)),
            Hold = MaybeValue(Flip),
            Group = Maybe(FilledText),
            Spread = Flip(),
            SeparateFrom = List(() =>
                new Separation
                {
                    Feed = Id<Feed>(),
                    By = Enum<SeparationBy>(),
                    Extensions = Extensions(),
                }
            ),
            BackupOf = MaybeValue(Id<Feed>),
            Limiter = MaybeValue(Flip),
            Person = Maybe(Text),
            DelayMilliseconds = MaybeValue(() => (double)Number(0, 1_000)),
            Override = Maybe(Text),
            Pack = Maybe(Text),
            Position = Maybe(Text),
            Notes = Maybe(Text),
            Extensions = Extensions(),
        };

    private Destination Destination() =>
        random.Next(4) switch
        {
            0 => new Destination { At = Points(), Extensions = Extensions() },
            1 => new Destination { Devices = List(Id<Device>, min: 1), Extensions = Extensions() },
            2 => new Destination { Zones = List(Id<Zone>, min: 1), Extensions = Extensions() },
            _ => new Destination
            {
                Devices = List(Id<Device>, min: 1),
                Zones = List(Id<Zone>, min: 1),
                Extensions = Extensions(),
            },
        };

    private Line Line() =>
        new()
        {
            Id = Id<Line>(),
            Name = Maybe(Text),
            Kind = Enum<LineKind>(),
            Phantom = Enum<PhantomNeed>(),
            Width = random.Next(1, 3),
            From = random.Next(4) switch
            {
                0 => new LineOrigin { At = List(Points, min: 1), Extensions = Extensions() },
                1 => new LineOrigin { Source = Points(), Extensions = Extensions() },
                2 => new LineOrigin { Devices = List(Id<Device>, min: 1), Extensions = Extensions() },
                _ => new LineOrigin
                {
                    Devices = List(Id<Device>, min: 1),
                    Zones = List(Id<Zone>, min: 1),
                    Extensions = Extensions(),
                },
            },
            To = List(Points, min: 1),
            Priority = Enum<Priority>(),
            Preferred = MaybeValue(() => Number(1, 99_999)),
            Hold = MaybeValue(Flip),
            Group = Maybe(FilledText),
            Equipment = Maybe(Text),
            Stand = Maybe(Text),
            Position = Maybe(Text),
            SuppliedBy = Maybe(Text),
            Notes = Maybe(Text),
            Extensions = Extensions(),
        };

    private Patch Patch() =>
        new()
        {
            Streams = List(() =>
                new AudioStream
                {
                    Id = Id<AudioStream>(),
                    Network = Id<Network>(),
                    From = Points(),
                    To = List(() =>
                        new StreamReceiver
                        {
                            At = Points(),
                            Channels = MaybeValue(Numbers),
                            Extensions = Extensions(),
                        }
                    ),
                    Keep = Flip(),
                    Label = Maybe(Text),
                    Extensions = Extensions(),
                }
            ),
            Routes = List(() =>
                new Route
                {
                    From = MaybeValue(Points),
                    To = Points(),
                    Extensions = Extensions(),
                }
            ),
            Inputs = List(() =>
                new InputSettings
                {
                    At = Points(),
                    Phantom = MaybeValue(Flip),
                    GainOwner = MaybeValue(Id<Device>),
                    GainFollowers = List(Id<Device>),
                    Extensions = Extensions(),
                }
            ),
            Labels = List(() =>
                new PointLabel
                {
                    At = Points(),
                    Text = Text(),
                    Extensions = Extensions(),
                }
            ),
            Extensions = Extensions(),
        };
}
