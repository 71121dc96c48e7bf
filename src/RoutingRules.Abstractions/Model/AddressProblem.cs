namespace RoutingRules.Model;

/// <summary>Why a text is not an address.</summary>
internal enum AddressProblem
{
    None,
    Empty,
    TooLong,
    PartCount,
    BadId,
    NoNumber,
    BadNumber,
    Zero,
    LeadingZero,
    TooLarge,
    Reversed,
}
