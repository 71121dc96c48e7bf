using RoutingRules.Model;
using RoutingRules.Reports.Sheets;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Signal;
using RoutingRules.Signal.Profiles;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Reports.Sheets;

/// <summary>A small show with one of everything a sheet must tell.</summary>
/// <remarks>
/// Block 1 (transmit 1-4: main L, main R, sub, nothing) goes to both boxes; block 2 (ears L, ears R) to the left box only.
/// So main L also sounds at SL box output 1 and main R at SR box output 2, though no feed wants them there.
/// </remarks>
internal static class SheetShow
{
    public static Show Full { get; } = MakeFull();

    public static Sheet Build(Show show, SheetOptions? options = null) => SheetBuilder.Build(ShowResolver.Resolve(show, new ProfileLibrary([])), options);

    public static DeviceSheet Device(this Sheet sheet, string id) => sheet.Devices.Single(device => device.Id.Value == id);

    public static SheetOutput Output(this Sheet sheet, string id, int number) => sheet.Device(id).Outputs[0].Rows[number - 1];

    public static SheetInput Input(this Sheet sheet, string id, int number) => sheet.Device(id).Inputs[0].Rows[number - 1];

    public static SheetChannel Channel(this Sheet sheet, string id, int number) => sheet.Device(id).Channels[0].Rows[number - 1];

    public static SheetBus Bus(this Sheet sheet, string group, int number) =>
        sheet.Device("desk").Buses.Single(table => table.Group.Value == group).Rows[number - 1];

    public static string[] Texts(this ValueList<SheetPath> paths) => [.. paths.Select(path => string.Join(" > ", path.Places))];

    private static Show MakeFull()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box-r", SmallProfiles.Box), ("box-l", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier));
        var devices = show.Rig.Devices;
        return show with
        {
            Title = "Harbour night",
            Venue = "Salt Shed",
            Date = new DateOnly(2027, 6, 12),
            Revision = "C",
            Rig = show.Rig with
            {
                Zones =
                [
                    new()
                    {
                        Id = new("sl"),
                        Name = "Fiddle corner",
                        Side = ZoneSide.HouseRight,
                        Walk = 1,
                    },
                    new()
                    {
                        Id = new("sr"),
                        Name = "Drum corner",
                        Side = ZoneSide.HouseLeft,
                        Walk = 2,
                    },
                ],
                Devices =
                [
                    devices[0] with
                    {
                        Label = "Desk",
                    },
                    devices[1] with
                    {
                        Label = "SR box",
                        Zone = new("sr"),
                    },
                    devices[2] with
                    {
                        Label = "SL box",
                        Zone = new("sl"),
                    },
                    devices[3] with
                    {
                        Label = "Right amp",
                        Zone = new("sr"),
                    },
                ],
                Cables = [Cable("box-r/out/1-2", "amp/in/1-2") with { Way = "loom B" }],
                Unavailable = [new() { At = At("box-r/in/2"), Reason = "crackles" }],
                Reserved = [new() { At = At("box-l/out/8"), Reason = "guest desk" }],
            },
            Feeds =
            [
                new()
                {
                    Id = new("main-l"),
                    Name = "Main L",
                    Role = FeedRole.Main,
                    Source = At("desk/main/1"),
                    To = [new() { Zones = [new("sr")] }],
                },
                FeedTo("main-r", FeedRole.Main, "desk/main/2", "box-l") with
                {
                    Name = "Main R",
                },
                FeedTo("sub", FeedRole.Sub, "desk/aux/1", "box-r", "box-l") with
                {
                    Name = "Subs",
                },
                FeedTo("wedge", FeedRole.Monitor, "desk/aux/2", "box-l") with
                {
                    Name = "Wedge",
                },
                Feed("ears", FeedRole.InEar, "desk/aux/3-4", "box-l/out/5-6") with
                {
                    Name = "Ears",
                    Person = "the singer",
                    Pack = "1",
                    Limiter = true,
                },
            ],
            Lines =
            [
                Line("kick", "box-r/in/1", "desk/channel/1") with
                {
                    Name = "Kick",
                    Phantom = PhantomNeed.Required,
                    Equipment = "boundary microphone",
                },
                Line("keys", "box-r/in/3-4", "desk/channel/3-4") with
                {
                    Name = "Keys",
                    Kind = LineKind.Line,
                    Phantom = PhantomNeed.Forbidden,
                    Stand = "none",
                },
                new()
                {
                    Id = new("voice"),
                    Name = "Voice",
                    Kind = LineKind.Microphone,
                    From = new() { Zones = [new("sl")] },
                    To = [At("desk/channel/5")],
                },
                Line("talk", "desk/in/1", "desk/channel/8") with
                {
                    Name = "Talk",
                },
            ],
            Patch = new Patch
            {
                Streams =
                [
                    Stream("both", "desk/transmit/1-4", "box-r/receive/1-4", "box-l/receive/1-4"),
                    Stream("left", "desk/transmit/5-8", "box-l/receive/5-8"),
                    Stream("stage", "box-r/transmit/1-4", "desk/receive/1-4"),
                ],
                Routes =
                [
                    Route("desk/main/1-2", "desk/transmit/1-2"),
                    Route("desk/aux/1", "desk/transmit/3"),
                    Route(null, "desk/transmit/4"),
                    Route("desk/aux/3-4", "desk/transmit/5-6"),
                    Route("desk/in/1", "desk/channel/8"),
                ],
                Inputs =
                [
                    new()
                    {
                        At = At("box-r/in/1"),
                        Phantom = true,
                        GainOwner = new("desk"),
                    },
                    new()
                    {
                        At = At("box-r/in/3-4"),
                        Phantom = true,
                        GainOwner = new("desk"),
                    },
                ],
                Labels = [new() { At = At("box-r/out/1"), Text = "MAIN LEFT" }, new() { At = At("desk/channel/1"), Text = "KICK" }],
            },
        };
    }
}
