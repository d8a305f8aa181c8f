using System.Net;
using System.Net.Sockets;

namespace SecondShore.Host.Security;

/// <summary>By what a caller is counted: its address, or the network of one line where that has addresses without end.</summary>
internal static class CallerAddress
{
    /// <summary>The address as text; of IPv6 its first 64 bits, which one household has.</summary>
    public static string KeyOf(IPAddress? address)
    {
        if (address is null) return "";
        if (address.IsIPv4MappedToIPv6) address = address.MapToIPv4();
        if (address.AddressFamily != AddressFamily.InterNetworkV6 || IPAddress.IsLoopback(address)) return address.ToString();
        byte[] bytes = address.GetAddressBytes();
        Array.Clear(bytes, 8, 8);
        return new IPAddress(bytes) + "/64";
    }
}
