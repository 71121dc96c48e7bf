using RoutingRules.Model;

namespace RoutingRules.Reports.Riders;

/// <summary>Where what a band asks for goes on the rig of the house.</summary>
public sealed record RiderOptions
{
    /// <summary>The devices at which lines may be plugged and wedges fed; none when the show has but one stage box.</summary>
    public ValueList<Id<Device>> Boxes { get; init; }

    /// <summary>The consoles whose channels take the lines; none when the show has but one.</summary>
    public ValueList<Id<Device>> Consoles { get; init; }

    /// <summary>The console whose buses make the mixes; null for the last of <see cref="Consoles"/>.</summary>
    public Id<Device>? MixConsole { get; init; }

    /// <summary>The channel for the band's number 1, from 1.</summary>
    public int FirstChannel { get; init; } = 1;

    /// <summary>The bus for the band's first mix, from 1.</summary>
    public int FirstBus { get; init; } = 1;

    /// <summary>Longest list in bytes. 4 MiB.</summary>
    public int MaxBytes { get; init; } = 4 * 1024 * 1024;

    /// <summary>Most problems and questions that are told one by one. 200.</summary>
    public int MaxProblems { get; init; } = 200;
}
