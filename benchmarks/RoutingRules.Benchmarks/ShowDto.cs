namespace RoutingRules.Benchmarks;

/// <summary>
/// The show as plain classes, as a program would write them that leaves reading to the serializer: addresses and words stay unread texts, nothing is checked.
/// </summary>
public sealed class ShowDto
{
    public required int SchemaVersion { get; set; }

    public required string Title { get; set; }

    public string? Venue { get; set; }

    public string? Date { get; set; }

    public string? Revision { get; set; }

    public required RigDto Rig { get; set; }

    public List<FeedDto>? Feeds { get; set; }

    public List<LineDto>? Lines { get; set; }

    public PatchDto? Patch { get; set; }

    public List<WaiverDto>? Waivers { get; set; }

    public sealed class WaiverDto
    {
        public required string Rule { get; set; }

        public List<EntityDto>? Entities { get; set; }

        public string? Fingerprint { get; set; }

        public required string Reason { get; set; }

        public required string Owner { get; set; }

        public required string Expires { get; set; }
    }

    public sealed class EntityDto
    {
        public required string Role { get; set; }

        public required string Id { get; set; }
    }

    public sealed class RigDto
    {
        public List<ZoneDto>? Zones { get; set; }

        public List<ClockDto>? Clocks { get; set; }

        public List<NetworkDto>? Networks { get; set; }

        public List<DeviceDto>? Devices { get; set; }

        public List<LinkDto>? Links { get; set; }
    }

    public sealed class ZoneDto
    {
        public required string Id { get; set; }

        public string? Name { get; set; }

        public string? Side { get; set; }

        public int? Walk { get; set; }

        public List<string>? Near { get; set; }
    }

    public sealed class ClockDto
    {
        public required string Id { get; set; }

        public required int SampleRate { get; set; }

        public required string Leader { get; set; }

        public string? Backup { get; set; }
    }

    public sealed class NetworkDto
    {
        public required string Id { get; set; }

        public string? Name { get; set; }

        public required string Transport { get; set; }

        public int? PacketMicroseconds { get; set; }

        public int? PresentationOffsetMicroseconds { get; set; }

        public string? Clock { get; set; }

        public string? LoopControl { get; set; }
    }

    public sealed class DeviceDto
    {
        public required string Id { get; set; }

        public required string Profile { get; set; }

        public string? Label { get; set; }

        public string? Zone { get; set; }

        public List<string>? Power { get; set; }

        public string? Notes { get; set; }
    }

    public sealed class LinkDto
    {
        public required string Id { get; set; }

        public required string Network { get; set; }

        public required string From { get; set; }

        public required string To { get; set; }

        public string? Medium { get; set; }

        public double? LengthMetres { get; set; }

        public int? SpeedMbps { get; set; }
    }

    public sealed class FeedDto
    {
        public required string Id { get; set; }

        public string? Name { get; set; }

        public string? Role { get; set; }

        public string? Set { get; set; }

        public string? Part { get; set; }

        public required string Source { get; set; }

        public required List<DestinationDto> To { get; set; }

        public string? Priority { get; set; }

        public int? Preferred { get; set; }

        public bool? Hold { get; set; }

        public string? Group { get; set; }

        public bool Spread { get; set; }

        public string? BackupOf { get; set; }

        public bool? Limiter { get; set; }

        public string? Person { get; set; }

        public string? Pack { get; set; }

        public string? Position { get; set; }

        public string? Notes { get; set; }
    }

    public sealed class DestinationDto
    {
        public string? At { get; set; }

        public List<string>? Devices { get; set; }

        public List<string>? Zones { get; set; }
    }

    public sealed class LineDto
    {
        public required string Id { get; set; }

        public string? Name { get; set; }

        public required string Kind { get; set; }

        public string? Phantom { get; set; }

        public int Width { get; set; } = 1;

        public required OriginDto From { get; set; }

        public required List<string> To { get; set; }

        public string? Group { get; set; }

        public string? Equipment { get; set; }

        public string? Stand { get; set; }

        public string? Position { get; set; }

        public string? Notes { get; set; }
    }

    public sealed class OriginDto
    {
        public List<string>? At { get; set; }

        public List<string>? Devices { get; set; }

        public List<string>? Zones { get; set; }

        public string? Source { get; set; }
    }

    public sealed class PatchDto
    {
        public List<StreamDto>? Streams { get; set; }

        public List<RouteDto>? Routes { get; set; }

        public List<LabelDto>? Labels { get; set; }
    }

    public sealed class StreamDto
    {
        public required string Id { get; set; }

        public required string Network { get; set; }

        public required string From { get; set; }

        public List<ReceiverDto>? To { get; set; }

        public bool Keep { get; set; }

        public string? Label { get; set; }
    }

    public sealed class ReceiverDto
    {
        public required string At { get; set; }

        public string? Channels { get; set; }
    }

    public sealed class RouteDto
    {
        public required string? From { get; set; }

        public required string To { get; set; }
    }

    public sealed class LabelDto
    {
        public required string At { get; set; }

        public required string Text { get; set; }
    }
}
