namespace RoutingRules.Reports.Names;

/// <summary>Where the address of points stands in a text.</summary>
/// <param name="Start">Position of its first character.</param>
/// <param name="Numbers">Position of its first number.</param>
/// <param name="End">Position after the last of its runs: <c>box/in/1-4, 7</c> is one address.</param>
/// <param name="Device">The id of the device.</param>
/// <param name="Group">The id of the group.</param>
internal readonly record struct AddressSpan(int Start, int Numbers, int End, string Device, string Group);
