using RoutingRules.Model;

namespace RoutingRules.Documents.Tables;

/// <summary>The kinds of values that many tables share.</summary>
internal static class Kinds
{
    public const int MaxSampleRate = 384_000;
    public const int MinSampleRate = 8_000;
    public const int MaxCount = 65_535;

    /// <summary>A text that may be empty.</summary>
    public static TextKind Text { get; } = new(empty: true);

    /// <summary>A text of at least one character.</summary>
    public static TextKind FilledText { get; } = new(empty: false);

    /// <summary>A text of at least one character that names something in several places.</summary>
    public static TextKind SharedText { get; } = new(empty: false, repeats: true);

    public static BoolKind Bool { get; } = new();

    public static DateKind Date { get; } = new();

    public static PointRangeKind PointRange { get; } = new();

    public static GroupRangeKind GroupRange { get; } = new();

    public static NumberRangeKind NumberRange { get; } = new();

    public static ExtensionKind Extensions { get; } = new();

    public static IntKind SampleRate { get; } = new(MinSampleRate, MaxSampleRate);

    /// <summary>A number of a point, from 1.</summary>
    public static IntKind PointNumber { get; } = new(1, AddressParser.MaxNumber);

    /// <summary>A count that may be 0.</summary>
    public static IntKind Count { get; } = new(0, MaxCount);

    /// <summary>A count from 1.</summary>
    public static IntKind CountFromOne { get; } = new(1, MaxCount);

    /// <summary>Milliseconds, up to ten seconds.</summary>
    public static DecimalNumberKind Milliseconds { get; } = new(10_000, positive: false);

    public static IdKind<TEntity> Id<TEntity>() => new();
}
