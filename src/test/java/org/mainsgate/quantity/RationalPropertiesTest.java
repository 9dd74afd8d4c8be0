package org.mainsgate.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.domains.Domain;
import net.jqwik.api.domains.DomainContext;

@Domain(Numbers.class)
@Domain(DomainContext.Global.class)
class RationalPropertiesTest {

  @Property
  void additionAndMultiplicationHaveInverses(@ForAll Rational a, @ForAll Rational b) {
    assertEquals(a, a.plus(b).minus(b));
    if (b.signum() != 0) {
      assertEquals(a, a.times(b).dividedBy(b));
    }
  }

  @Property
  void multiplicationDistributes(@ForAll Rational a, @ForAll Rational b, @ForAll Rational c) {
    assertEquals(a.times(b).plus(a.times(c)), a.times(b.plus(c)));
  }

  @Property
  void theOrderAgreesWithTheDifference(@ForAll Rational a, @ForAll Rational b) {
    assertEquals(Integer.signum(a.compareTo(b)), a.minus(b).signum());
    assertEquals(a.compareTo(b) == 0, a.equals(b));
  }

  @Property
  void downIsTheLargestDoubleNotAbove(@ForAll Rational a, @ForAll Rational b) {
    Rational value = b.signum() == 0 ? a : a.dividedBy(b);
    double down = value.down();
    assertTrue(down == Double.NEGATIVE_INFINITY || Rational.of(down).compareTo(value) <= 0);
    double next = Math.nextUp(down);
    assertTrue(next == Double.POSITIVE_INFINITY || Rational.of(next).compareTo(value) > 0);
    assertEquals(value.negate().down(), 0.0 - value.up());
  }

  @Property
  void aDoubleComesBackUnchanged(@ForAll double any) {
    double value = any + 0.0;
    assertEquals(value, Rational.of(value).down());
    assertEquals(value, Rational.of(value).up());
  }

  @Property
  void theTextOfADecimalIsReadBack(@ForAll BigDecimal decimal) {
    Rational value = Rational.of(decimal);
    assertEquals(value, Rational.of(new BigDecimal(value.toString())));
  }
}
